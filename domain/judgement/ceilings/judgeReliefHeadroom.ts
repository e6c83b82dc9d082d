/** System pressure against the relief valve: room enough left hot, and a stop where the valve is about to open. */
import type { PressurePractice } from '../../hydronics/pressure/pressureCustoms.ts';
import { highestNormalHotPressure, reliefHeadroom } from '../../hydronics/pressure/reliefHeadroom.ts';
import { buildFinding } from '../buildFinding.ts';
import type { Finding } from '../finding.ts';
import { againstLimit } from '../limits/againstLimit.ts';
import { inputsOf, type Measured } from '../measured.ts';
import { proofOf } from '../proof/proofOf.ts';
import type { Region } from '../regions.ts';
import type { RunContext } from '../runContext.ts';
import { RELIEF_CEILINGS } from '../safetyCeilings.ts';

const HOT = 'hot';

export function judgeReliefHeadroom(context: RunContext): readonly Finding[] {
  const setting = lowestSetting(context);
  return context.all('systemPressureBarG').flatMap((pressure) => {
    if (setting === undefined) return pressure.point === HOT ? [settingMissing(pressure, context)] : [];
    return judge(pressure, setting, context);
  });
}

/** Two valves on one system: the lower one opens. */
function lowestSetting(context: RunContext): Measured | undefined {
  return context
    .all('reliefSettingBarG')
    .reduce<Measured | undefined>((low, one) => (low === undefined || one.value < low.value ? one : low), undefined);
}

function judge(pressure: Measured, setting: Measured, context: RunContext): readonly Finding[] {
  const stopBarG = setting.value - RELIEF_CEILINGS.stopBelowSettingBar;
  const proof = proofOf([pressure, setting], context);
  const inputs = inputsOf([pressure, setting]);
  const subject = `ceiling:relief-headroom${pressure.point === null ? '' : `@${pressure.point}`}`;
  const limit = { quantity: pressure.quantity, point: pressure.point, min: null };
  const common = { subject, readingId: pressure.reading.readingId, proof } as const;
  if (againstLimit(pressure, { min: null, max: stopBarG, edge: 0, severity: 'stop' }).verdict === 'stop') {
    return [
      buildFinding({
        ...common,
        verdict: 'stop',
        blocks: ['firing', 'leaving', 'registration'],
        basis: {
          limit: { ...limit, max: stopBarG, severity: 'stop' },
          from: 'ceiling',
          source: RELIEF_CEILINGS.stopSource,
          formula: 'relief setting − 0.2 bar',
          inputs,
        },
        makeSafe: RELIEF_CEILINGS.makeSafe,
      }),
    ];
  }
  const strictest = strictestPractice(setting.value, context.region);
  if (strictest === null) {
    const missing = ['a relief setting between 1 and 16 bar'];
    const basis = { from: 'ceiling', inputs } as const;
    return [buildFinding({ ...common, verdict: 'cannot-judge', blocks: ['leaving'], basis, missing })];
  }
  const { practice, highestNormalBarG } = strictest;
  const headroom = reliefHeadroom({ pressureBarG: pressure.value, reliefSettingBarG: setting.value, practice });
  const edge = headroom.ok ? Math.max(0, highestNormalBarG - headroom.value.nearTheEdgeFromBarG) : 0;
  const { verdict, isNominallyInside } = againstLimit(pressure, {
    min: null,
    max: highestNormalBarG,
    edge,
    severity: 'outside',
  });
  return [
    buildFinding({
      ...common,
      verdict,
      blocks: isNominallyInside && proof.proven ? [] : ['leaving'],
      basis: {
        limit: { ...limit, max: highestNormalBarG, severity: 'outside' },
        from: 'ceiling',
        source: RELIEF_CEILINGS.source[practice],
        formula: practice === 'north-america' ? '0.9 · relief setting' : 'relief setting − 0.5 bar',
        inputs,
      },
      missing: verdict === 'cannot-judge' ? ['a reading inside the gauge’s range'] : [],
    }),
  ];
}

function strictestPractice(
  reliefSettingBarG: number,
  region: Region,
): { readonly practice: PressurePractice; readonly highestNormalBarG: number } | null {
  const candidates = practicesOf(region).flatMap((practice) => {
    const highest = highestNormalHotPressure({ reliefSettingBarG, practice });
    return highest.ok ? [{ practice, highestNormalBarG: highest.value }] : [];
  });
  return candidates.sort((one, other) => one.highestNormalBarG - other.highestNormalBarG)[0] ?? null;
}

function practicesOf(region: Region): readonly PressurePractice[] {
  if (region === 'north-america') return ['north-america'];
  return region === 'unknown' ? ['europe', 'north-america'] : ['europe'];
}

function settingMissing(pressure: Measured, context: RunContext): Finding {
  return buildFinding({
    subject: `ceiling:relief-headroom@${HOT}`,
    readingId: pressure.reading.readingId,
    verdict: 'cannot-judge',
    proof: proofOf([pressure], context),
    blocks: ['leaving'],
    basis: { from: 'ceiling', inputs: inputsOf([pressure]) },
    missing: ['the relief valve’s setting'],
  });
}
