/** The sheet that stays with the people who live there: one page, danger first, then the settings, the service, whom to call. */
import { HANDOVER_WORDS, type HandoverWords } from '../../../domain/messages/handoverWords.ts';
import type { MessageLanguage } from '../../../domain/messages/messageKinds.ts';
import { formatQuantity } from '../../../domain/quantity/formatQuantity.ts';
import type { UnitSystem } from '../../../domain/quantity/preferredUnit.ts';
import type { QuantityKey } from '../../../domain/quantity/quantities.ts';
import { blocksPdf } from '../blocksPdf.ts';
import type { Block, Fact } from '../page/blocks.ts';

export type Handover = {
  readonly language: MessageLanguage;
  readonly unitSystem: UnitSystem;
  readonly appliance: string;
  readonly serial: string;
  readonly startedOn: string | null;
  /** With the emergency number in it. */
  readonly safety: string;
  readonly firmName: string;
  readonly firmLines: readonly string[];
  readonly country: string;
  readonly serviceDueOn: string | null;
  readonly serviceLatestOn: string | null;
  /** What stands, in own units; null: not read. */
  readonly readings: Readonly<Record<HandoverReading, number | null>>;
  readonly madeAt: string;
};

export type HandoverReading =
  | 'coldPressureBarG'
  | 'hotPressureBarG'
  | 'supplySetpointC'
  | 'coldestOutdoorC'
  | 'coldestSupplyC'
  | 'mildOutdoorC'
  | 'mildSupplyC'
  | 'offAboveC'
  | 'storeC'
  | 'tapC';

export function handoverPdf(sheet: Handover): Promise<Uint8Array> {
  const words = HANDOVER_WORDS[sheet.language];
  return blocksPdf({
    blocks: handoverBlocks(sheet, words),
    images: new Map(),
    title: words.title,
    author: sheet.firmName,
    language: sheet.language,
    country: sheet.country,
    madeAt: sheet.madeAt,
    footer: null,
  });
}

function handoverBlocks(sheet: Handover, words: HandoverWords): readonly Block[] {
  const { readings } = sheet;
  const show = (key: QuantityKey, value: number | null): string | null => {
    if (value === null) return null;
    const { text, unit } = formatQuantity(key, value, sheet.unitSystem, sheet.language);
    return `${text} ${unit}`.trim();
  };
  const curve = (outdoor: number | null, supply: number | null): string | null => {
    const [outside, water] = [show('outdoorC', outdoor), show('supplySetpointC', supply)];
    return outside === null || water === null
      ? null
      : words.atOutdoor.replace('{supply}', water).replace('{outdoor}', outside);
  };
  return [
    { kind: 'heading', level: 1, text: words.title },
    { kind: 'notice', title: words.danger, lines: [unbroken(sheet.safety), words.lockout], tone: 'stop' },
    { kind: 'heading', level: 2, text: words.settings },
    {
      kind: 'facts',
      facts: known([
        [words.appliance, sheet.appliance],
        [words.serial, sheet.serial],
        [words.startedOn, sheet.startedOn],
        [words.pressureCold, show('systemPressureBarG', readings.coldPressureBarG)],
        [words.pressureHot, show('systemPressureBarG', readings.hotPressureBarG)],
        [words.supply, show('supplySetpointC', readings.supplySetpointC)],
        [words.coldest, curve(readings.coldestOutdoorC, readings.coldestSupplyC)],
        [words.mildest, curve(readings.mildOutdoorC, readings.mildSupplyC)],
        [words.offAbove, show('warmWeatherShutdownC', readings.offAboveC)],
        [words.storedWater, show('storeC', readings.storeC)],
        [words.tapWater, show('mixedOutletC', readings.tapC)],
      ]),
    },
    { kind: 'paragraph', text: words.pressureAdvice },
    { kind: 'heading', level: 2, text: words.service },
    ...(sheet.serviceDueOn === null
      ? [{ kind: 'paragraph', text: words.serviceUnknown } as const]
      : [
          {
            kind: 'facts',
            facts: known([
              [words.serviceDue, sheet.serviceDueOn],
              [words.serviceLatest, sheet.serviceLatestOn],
            ]),
          } as const,
        ]),
    { kind: 'heading', level: 2, text: words.call },
    { kind: 'paragraph', text: [sheet.firmName, ...sheet.firmLines].map(unbroken).join('\n'), tone: 'strong' },
    { kind: 'paragraph', text: words.manual },
  ];
}

/** A number to call is not torn apart at the end of a line. */
function unbroken(text: string): string {
  return text.replaceAll(/(?<=\d) (?=\d)/gu, '\u00a0');
}

function known(pairs: readonly (readonly [string, string | null])[]): readonly Fact[] {
  return pairs.flatMap(([label, value]) => (value === null ? [] : [{ label, value }]));
}
