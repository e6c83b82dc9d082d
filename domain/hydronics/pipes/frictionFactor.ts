import { checkRange, err, type OutOfRange, ok, type Result } from '../../result.ts';

/** Between laminar and turbulent the flow is unstable and no formula holds. */
export type TransitionalFlow = { readonly code: 'transitional-flow'; readonly reynolds: number };

/**
 * Friction factor after Darcy.
 *
 * Formula  Re ≤ 2300: 64/Re; Re ≥ 4000: 1/√f = −2·log10[ε/(3.7D) + 2.51/(Re·√f)], solved by iteration; between: an error
 * Units    Re and ε/D without unit
 * Valid    Re 1–1e8, ε/D 0–0.05; outside it an error, never a number
 * Source   Hagen–Poiseuille; Colebrook–White
 * Checked  tests/checks/hydronics/pipeRows.ts F3–F7
 */
export function frictionFactor(flow: {
  readonly reynolds: number;
  readonly relativeRoughness: number;
}): Result<number, OutOfRange | TransitionalFlow> {
  const { reynolds, relativeRoughness } = flow;
  const refused =
    checkRange('reynolds', reynolds, 1, 1e8) ?? checkRange('relativeRoughness', relativeRoughness, 0, 0.05);
  if (refused) return err(refused);
  if (reynolds <= LAMINAR_UP_TO) return ok(64 / reynolds);
  if (reynolds < TURBULENT_FROM) return err({ code: 'transitional-flow', reynolds });
  // x = 1/√f; the right side is so flat in x that each round gains about a digit.
  let x = 7;
  for (let round = 0; round < 40; round += 1) {
    x = -2 * Math.log10(relativeRoughness / 3.7 + (2.51 * x) / reynolds);
  }
  return ok(1 / x ** 2);
}

const LAMINAR_UP_TO = 2300;
const TURBULENT_FROM = 4000;
