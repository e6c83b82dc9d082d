/** The results, numbers and units aligned; what is not known says what it needs. */
import type { ShownLine } from './core/evaluate.ts';

export function ResultTable({ title, lines }: { readonly title: string; readonly lines: readonly ShownLine[] }) {
  return (
    <table className="ws-results" aria-label={`${title}: results`}>
      <tbody>
        {lines.map((line) => (
          <tr key={line.label} data-main={line.isMain} data-known={line.because === null}>
            <th scope="row">{line.label}</th>
            <Value line={line} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Value({ line: { text, unit, tone, because } }: { readonly line: ShownLine }) {
  if (because !== null) {
    return (
      <td colSpan={2} className="ws-because">
        {because}
      </td>
    );
  }
  if (tone !== 'plain' || (unit === '' && !/^[\u2212\d]/.test(text))) {
    return (
      <td colSpan={2} className="ws-words" data-tone={tone}>
        {text}
      </td>
    );
  }
  return (
    <>
      <td className="ws-number">{text}</td>
      <td className="lo-faint">{unit}</td>
    </>
  );
}
