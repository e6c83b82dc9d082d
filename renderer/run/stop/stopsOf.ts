/** What says "make safe now": findings of readings that stand, and answers that mean stop. */
import type { Finding } from '../../../domain/judgement/finding.ts';
import { BURNER_OFF, EVERYBODY_OUT } from '../../../domain/judgement/makeSafe.ts';
import { foundAt } from '../../../domain/procedure/progress/foundAt.ts';
import type { ItemAddress } from '../../../domain/procedure/progressTypes.ts';
import type { RunView } from '../../../electron/contract/runs.ts';
import type { RunAnalysis } from '../analyseRun.ts';
import { newestAnswer, readingText } from '../stage/answerText.ts';
import { basisWords, subjectWords } from '../words/findingWords.ts';
import { suggestionQuestion } from '../words/suggestionWords.ts';

export type Stop = {
  /** Same key, same stop: it takes over the screen once. */
  readonly key: string;
  readonly what: string;
  readonly why: string;
  readonly makeSafe: readonly string[];
  readonly leaveFirst: boolean;
  /** What the same number may have been, had it been typed wrongly: `°F typed in a °C box?` */
  readonly asks: readonly string[];
  /** When it was read or answered. */
  readonly since: string;
  /** Where it was read or answered. */
  readonly at: ItemAddress | null;
};

export function stopsOf(
  view: Pick<RunView, 'record' | 'sheet'>,
  analysis: Pick<RunAnalysis, 'steps' | 'findings'>,
): readonly Stop[] {
  return [...findingStops(view, analysis), ...answerStops(view, analysis.steps)];
}

/** One reading may break a sheet's limit and two ceilings at once: it stops once, by what asks for most. */
function findingStops(
  view: Pick<RunView, 'record' | 'sheet'>,
  analysis: Pick<RunAnalysis, 'steps' | 'findings'>,
): readonly Stop[] {
  const stops = analysis.findings
    .filter((finding) => finding.verdict === 'stop')
    .map((finding) => findingStop(finding, view, analysis))
    .sort((one, other) => Number(other.leaveFirst) - Number(one.leaveFirst));
  return [...Map.groupBy(stops, (stop) => stop.key).values()].flatMap((same) => same[0] ?? []);
}

function findingStop(
  finding: Finding,
  view: Pick<RunView, 'record' | 'sheet'>,
  { steps, findings }: Pick<RunAnalysis, 'steps' | 'findings'>,
): Stop {
  const ids = finding.readingId === null ? Object.values(finding.basis.inputs) : [finding.readingId];
  const readings = view.record.readings.filter((one) => ids.includes(one.readingId));
  const source = readings.at(-1);
  const item = steps.flatMap((step) => step.items).find((one) => one.key === source?.itemKey);
  const subject = subjectWords(finding, view.sheet);
  const values = readings.map((one) => readingText(one, 'metric')).join(', ');
  return {
    // What was worked out from a reading and from others before it is the same stop as the reading's own.
    key: source?.readingId ?? finding.subject,
    what: `${finding.readingId !== null && item?.kind === 'read' ? item.label : subject}${values === '' ? '' : `: ${values}`}`,
    why: basisWords(finding),
    makeSafe: finding.makeSafe.length > 0 ? finding.makeSafe : BURNER_OFF,
    leaveFirst: finding.leaveFirst === true,
    asks: [...new Set(readings.flatMap((one) => askedOf(one.readingId, findings)))],
    since: foundAt(readings) ?? '',
    at: source === undefined ? null : { stepKey: source.stepKey, itemKey: source.itemKey },
  };
}

function askedOf(readingId: string, findings: readonly Finding[]): readonly string[] {
  return findings.flatMap(({ suggestions }) =>
    suggestions
      .filter(({ changes }) => changes.some((one) => one.readingId === readingId))
      .map(({ code }) => suggestionQuestion(code)),
  );
}

function answerStops(view: Pick<RunView, 'record'>, steps: RunAnalysis['steps']): readonly Stop[] {
  return steps.flatMap((step) =>
    step.items.flatMap((item) => {
      if (item.kind !== 'choose') return [];
      const answer = newestAnswer(view.record, item.key);
      const option = item.options.find((one) => one.value === answer?.value);
      if (answer === null || option === undefined || option.outcome !== 'stop') return [];
      // The words are a net under sheets that were written without saying so.
      const leaveFirst = option.leaveFirst === true || saysGasSmell(`${item.label} ${option.label}`);
      return [
        {
          key: `${item.key} ${answer.at}`,
          what: `${item.label.replace(/\?$/, '')}: ${option.label}`,
          why: step.title,
          makeSafe: leaveFirst ? EVERYBODY_OUT : BURNER_OFF,
          leaveFirst,
          asks: [],
          since: answer.at,
          at: { stepKey: step.key, itemKey: item.key },
        },
      ];
    }),
  );
}

function saysGasSmell(words: string): boolean {
  return /\bgas smell\b|smell of gas/i.test(words);
}
