/**
 * Adaptive large neighbourhood search: take some visits out, put them back, keep what is better and at first also what is
 * a little worse. The same model, start and draws give the same plan; there is no clock in here.
 */
import { compareGoals, countGoals, type Goals, newGoals, softCost } from './countGoals.ts';
import { createInserter, createPool, type Inserter, type Pool } from './insertAll.ts';
import { type RandomSource, randomSource, shuffle } from './randomSource.ts';
import { createRemovals } from './removals.ts';
import { copyState, createState, type RouteState } from './routeState.ts';
import type { RoutingModel } from './routingModel.ts';
import { createSwapRoutes } from './swapRoutes.ts';

export type SearchControl = {
  readonly seed: number;
  /** The search ends after so many rounds at the latest. */
  readonly maxRounds: number;
  /** Cancel, or a time limit: asked every round. */
  readonly shouldStop?: () => boolean;
  /** Share of the allowed time that has passed, 0 to 1, where a clock sets the limit; without it rounds do. */
  readonly elapsedShare?: () => number;
  /** From how hot it cools, as a share of the usual; less where the start is a plan to stay near. */
  readonly heat?: number;
  /** Whether wished grains are passed over: then more fits. */
  readonly isToTheMinute?: boolean;
  /** Called when a better plan is found; the state is only valid during the call. */
  readonly onBetter?: (state: RouteState, rounds: number) => void;
};

export type SearchOutcome = { readonly best: RouteState; readonly goals: Goals; readonly rounds: number };

/** Rounds after which the shares of the ways to remove and to insert are set anew. */
const ADAPT_EVERY = 100;
/** How much of a share is renewed by what was seen. */
const REACTION = 0.1;
/** Never less: what is useless now may help later. */
const LEAST_SHARE = 0.05;
const REWARD = { best: 20, better: 6, accepted: 1 } as const;
/**
 * Temperatures: at first some ways between any two visits, so that whole groups of them change hands; at the end a small
 * share of the way to a neighbour.
 */
const HOT = 3;
const COLD = 0.01;
/** In most rounds strings are taken out and put back in turn; only the others draw their way by what it brought. */
const MAIN_SHARE = 0.9;
/** Of two whole routes exchanged. */
const SWAP_SHARE = 0.02;
/** Visits left out that are tried again per round, besides those just taken out. */
const RETRIED = 24;

export function search(model: RoutingModel, start: RouteState, control: SearchControl): SearchOutcome {
  const random = randomSource(control.seed);
  const inserter = createInserter(model, random, control.isToTheMinute);
  const removals = createRemovals(model, random);
  const swapRoutes = createSwapRoutes(model, random, control.isToTheMinute);
  const current = createState(model);
  const working = createState(model);
  const best = createState(model);
  const pool = createPool(model);
  const work = new Float64Array(model.technicianCount);
  const meanLeg = meanLegOf(model);
  const hot = HOT * (control.heat ?? 1) * Math.max(meanLeg, meanWayOf(model));
  const cold = COLD * meanLeg;

  copyState(start, current);
  const goals = newGoals();
  const bestGoals = newGoals();
  countGoals(model, current, goals, work);
  bestGoals.set(goals);
  copyState(current, best);
  let currentCost = softCost(model, current, goals, meanLeg);
  let bestCost = currentCost;

  const inserts = insertionWays(model, inserter, random, meanLeg);
  const removalShares = createShares(removals.length);
  const insertShares = createShares(inserts.length);
  const movable = countMovable(model);
  let rounds = 0;
  let sinceBetter = 0;
  if (movable > 0) {
    for (; rounds < control.maxRounds; rounds += 1) {
      if (control.shouldStop?.() === true) break;
      const share = control.elapsedShare === undefined ? rounds / control.maxRounds : control.elapsedShare();
      if (share >= 1) break;
      const temperature = hot * (cold / hot) ** share;
      const isSwap = random.next() < SWAP_SHARE;
      const removal = random.next() < MAIN_SHARE ? STRINGS : removalShares.draw(random);
      const insert = isSwap || random.next() < MAIN_SHARE ? GREEDY : insertShares.draw(random);
      const judgedBefore = inserter.judged();

      copyState(current, working);
      pool.count = 0;
      if (isSwap) swapRoutes(working, pool);
      else removals[removal]?.(working, pool, drawCount(random, movable));
      addLeftOut(model, working, pool, random);
      inserts[insert]?.(working, pool);

      countGoals(model, working, goals, work);
      const cost = softCost(model, working, goals, meanLeg);
      let reward = 0;
      const isBest = compareGoals(goals, bestGoals) < 0;
      if (isBest) {
        bestGoals.set(goals);
        copyState(working, best);
        bestCost = cost;
        sinceBetter = 0;
        reward = REWARD.best;
        control.onBetter?.(best, rounds + 1);
      } else {
        sinceBetter += 1;
      }
      if (isBest || cost < currentCost - temperature * Math.log(1 - random.next())) {
        if (!isBest) reward = cost < currentCost ? REWARD.better : REWARD.accepted;
        copyState(working, current);
        currentCost = cost;
      }
      const effort = 1 + inserter.judged() - judgedBefore;
      if (!isSwap) {
        removalShares.note(removal, reward, effort);
        insertShares.note(insert, reward, effort);
      }
      if ((rounds + 1) % ADAPT_EVERY === 0) {
        removalShares.adapt();
        insertShares.adapt();
      }
      // Far away for long: back to the best plan.
      if (sinceBetter > 0 && sinceBetter % RETURN_AFTER === 0 && currentCost > bestCost) {
        copyState(best, current);
        currentCost = bestCost;
      }
    }
  }
  return { best, goals: bestGoals, rounds };
}

const RETURN_AFTER = 6000;
/** First in their lists. */
const [STRINGS, GREEDY] = [0, 0];

type InsertWay = (state: RouteState, pool: Pool) => void;

function insertionWays(
  model: RoutingModel,
  inserter: Inserter,
  random: RandomSource,
  meanLeg: number,
): readonly InsertWay[] {
  const keys = insertionKeys(model);
  const greedy: InsertWay = (state, pool) => {
    shuffle(pool.visits, pool.count, random);
    const draw = random.next();
    if (draw > 0.35) {
      const key = keys[random.below(keys.length)];
      if (key !== undefined) sortBy(pool, key);
    }
    if (random.next() < 0.5) sortBy(pool, keys[0] ?? key0);
    inserter.greedy(state, pool, 0.01);
  };
  const regret =
    (order: number): InsertWay =>
    (state, pool) => {
      shuffle(pool.visits, pool.count, random);
      const noise = random.next() < 0.5 ? meanLeg * 0.1 : 0;
      inserter.regret(state, pool, order, noise, random.next() < 0.5);
    };
  return [greedy, regret(1), regret(2), regret(3)];
}

const key0 = (): number => 0;

/** Orders in which visits are put back; the first: pressing ones before others. */
function insertionKeys(model: RoutingModel): readonly ((visit: number) => number)[] {
  const far = new Float64Array(model.visitCount);
  const room = new Float64Array(model.visitCount);
  const early = new Float64Array(model.visitCount);
  const home = model.routeCount > 0 ? (model.routeHome[0] as number) : 0;
  for (let visit = 0; visit < model.visitCount; visit += 1) {
    far[visit] = model.travel[home * model.placeCount + (model.visitPlace[visit] as number)] as number;
    const first = model.optionIndex[visit] as number;
    const end = model.optionIndex[visit + 1] as number;
    let earliest = Number.POSITIVE_INFINITY;
    for (let option = first; option < end; option += 1) {
      room[visit] =
        (room[visit] as number) + (model.optionTo[option] as number) - (model.optionFrom[option] as number) + 1;
      earliest = Math.min(earliest, model.optionFrom[option] as number);
    }
    early[visit] = first === end ? 0 : earliest;
  }
  return [
    (visit) => -(model.pressing[visit] as number),
    (visit) => room[visit] as number,
    (visit) => -(model.load[visit] as number) * 1e6 - (model.duration[visit] as number),
    (visit) => -(far[visit] as number),
    (visit) => far[visit] as number,
    (visit) => early[visit] as number,
  ];
}

/** Stable: a shuffle before it decides between equals. */
function sortBy(pool: Pool, key: (visit: number) => number): void {
  pool.visits.subarray(0, pool.count).sort((a, b) => key(a) - key(b));
}

/** 4 to 40 % of the movable visits, at most 60, small numbers more often. */
function drawCount(random: RandomSource, movable: number): number {
  const least = Math.min(movable, Math.max(2, Math.round(movable * 0.04)));
  const most = Math.min(60, Math.max(least, Math.round(movable * 0.4)));
  return least + Math.floor(random.next() ** 2 * (most - least + 1));
}

function addLeftOut(model: RoutingModel, state: RouteState, pool: Pool, random: RandomSource): void {
  const taken = pool.count;
  for (let visit = 0; visit < model.visitCount; visit += 1) {
    if ((state.routeOf[visit] as number) >= 0) continue;
    if (model.optionIndex[visit] === model.optionIndex[visit + 1]) continue;
    let isIn = false;
    for (let at = 0; at < taken && !isIn; at += 1) isIn = pool.visits[at] === visit;
    if (isIn) continue;
    pool.visits[pool.count] = visit;
    pool.count += 1;
  }
  const leftOut = pool.count - taken;
  if (leftOut <= RETRIED) return;
  const rest = pool.visits.subarray(taken, pool.count);
  shuffle(rest, leftOut, random);
  pool.count = taken + RETRIED;
}

function countMovable(model: RoutingModel): number {
  let count = 0;
  for (let visit = 0; visit < model.visitCount; visit += 1) {
    if (model.isMovable[visit] === 1 && model.optionIndex[visit] !== model.optionIndex[visit + 1]) count += 1;
  }
  return count;
}

/** What one leg between neighbours costs, roughly: the scale of temperatures and noise. */
function meanLegOf(model: RoutingModel): number {
  const { visitCount, placeCount, travel, visitPlace } = model;
  let sum = 0;
  for (let visit = 0; visit < visitCount; visit += 1) {
    const nearest: number[] = [];
    const row = (visitPlace[visit] as number) * placeCount;
    for (let other = 0; other < visitCount; other += 1) {
      if (other !== visit) nearest.push(travel[row + (visitPlace[other] as number)] as number);
    }
    nearest.sort((a, b) => a - b);
    sum += nearest[Math.min(4, nearest.length - 1)] ?? 0;
  }
  return Math.max(1, sum / Math.max(1, visitCount));
}

/** Of all ways between two visits. */
function meanWayOf({ visitCount, placeCount, travel, visitPlace }: RoutingModel): number {
  let sum = 0;
  for (let visit = 0; visit < visitCount; visit += 1) {
    const row = (visitPlace[visit] as number) * placeCount;
    for (let other = 0; other < visitCount; other += 1) sum += travel[row + (visitPlace[other] as number)] as number;
  }
  return sum / Math.max(1, visitCount * (visitCount - 1));
}

type Shares = {
  readonly draw: (random: RandomSource) => number;
  readonly note: (way: number, reward: number, effort: number) => void;
  readonly adapt: () => void;
};

/** Which way to choose how often: by what it brought for the positions it had to judge. */
function createShares(ways: number): Shares {
  const shares = new Float64Array(ways).fill(1);
  const rewards = new Float64Array(ways);
  const efforts = new Float64Array(ways);
  return {
    draw(random) {
      let sum = 0;
      for (let way = 0; way < ways; way += 1) sum += shares[way] as number;
      let left = random.next() * sum;
      for (let way = 0; way < ways; way += 1) {
        left -= shares[way] as number;
        if (left < 0) return way;
      }
      return ways - 1;
    },
    note(way, reward, effort) {
      rewards[way] = (rewards[way] as number) + reward;
      efforts[way] = (efforts[way] as number) + effort;
    },
    adapt() {
      let mean = 0;
      let used = 0;
      for (let way = 0; way < ways; way += 1) {
        if ((efforts[way] as number) === 0) continue;
        mean += (rewards[way] as number) / (efforts[way] as number);
        used += 1;
      }
      mean /= Math.max(1, used);
      for (let way = 0; way < ways; way += 1) {
        const effort = efforts[way] as number;
        if (effort > 0 && mean > 0) {
          const worth = Math.min(5, (rewards[way] as number) / effort / mean);
          shares[way] = Math.max(LEAST_SHARE, (shares[way] as number) * (1 - REACTION) + worth * REACTION);
        }
        rewards[way] = 0;
        efforts[way] = 0;
      }
    },
  };
}
