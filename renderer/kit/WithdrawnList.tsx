/** What was withdrawn as typed by mistake: still readable with its reason, and put back with one press. */
import { Button, Group } from '@mantine/core';

export function WithdrawnList({
  rows,
  onPutBack,
}: {
  readonly rows: readonly { readonly id: string; readonly name: string; readonly why: string | null }[];
  /** Left out where this person may only read. */
  readonly onPutBack?: (id: string) => void;
}) {
  if (rows.length === 0) return null;
  return (
    <ul className="lo-faint" aria-label="Withdrawn" style={{ margin: 0, paddingInlineStart: '1.2rem' }}>
      {rows.map(({ id, name, why }) => (
        <li key={id}>
          <Group gap="sm">
            <span>
              {name}: withdrawn{why === null ? '' : ` (${why})`}
            </span>
            {onPutBack === undefined ? null : (
              <Button variant="default" size="compact-sm" onClick={() => onPutBack(id)}>
                Put back<span className="lo-hidden"> {name}</span>
              </Button>
            )}
          </Group>
        </li>
      ))}
    </ul>
  );
}
