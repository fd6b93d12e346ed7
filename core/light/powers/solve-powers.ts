import { finiteOrNull, keepFinite } from '../../units/finite.ts';
import { ratioFromStops } from '../../units/stops.ts';
import { descendPowers } from './power-descent.ts';
import {
  DARKEST_STOPS,
  middleRow,
  type PowerProblem,
  type ReadyTarget,
  readyTarget,
  targetLevel,
} from './power-targets.ts';
import { type StepChoice, searchSteps } from './step-search.ts';

/** What keeps a target from being met; 'lights-disagree': the targets want different things of the same light. */
export type Hindrance = 'too-weak' | 'too-strong' | 'bright-without-flash' | 'lights-disagree';

export type SolvedLight = {
  readonly id: string;
  /** In ⅓ steps [stops]; null: it does not fire */
  readonly powerStops: number | null;
  readonly bound: 'least' | 'full' | null;
  /**
   * The power that would bring the target this light does most for to its wanted level, the others left as
   * they are [stops]: beyond the head's range when the light is too weak or too strong; null when no power
   * would, or it does not fire
   */
  readonly neededStops: number | null;
};

export type SolvedTarget = {
  readonly name: string;
  readonly wantedStops: number;
  /** [stops]; null where no light comes */
  readonly levelStops: number | null;
  /** Level over wanted [stops] */
  readonly missStops: number | null;
  /** null: within ⅓ stop of what is wanted */
  readonly hindrance: Hindrance | null;
};

export type SolvedPowers = {
  readonly lights: readonly SolvedLight[];
  readonly targets: readonly SolvedTarget[];
  /** Σ weight·miss² [stops²] */
  readonly cost: number;
};

/** A head with so many thirds of range is beyond any built; it bounds the search. */
const LOWEST_THIRDS = -60;
/** Nearer than this a target is met: one step of the power dial [stops]. */
const MET_WITHIN_STOPS = 1 / 3 + 1e-9;
/** Starts of the search, as parts of the way from full to the least power. */
const STARTS = [0, 0.5, 1] as const;

function bestChoice(targets: readonly ReadyTarget[], least: Int32Array): StepChoice {
  const leastStops = Float64Array.from(least, (thirds) => thirds / 3);
  let best: StepChoice | null = null;
  for (const part of STARTS) {
    const smooth = descendPowers(
      targets,
      leastStops.map((stops) => stops * part),
      leastStops,
    );
    const rounded = Int32Array.from(smooth, (stops) => Math.round(stops * 3));
    const choice = searchSteps(targets, rounded, least, 'near');
    if (best === null || choice.cost < best.cost) best = choice;
  }
  return searchSteps(targets, best?.thirds ?? least, least, 'far');
}

/** Light of each head in the middle of a target, at the solved powers, and the level [linear]. */
function sharesOf(target: ReadyTarget, fractions: Float64Array) {
  const level = targetLevel(target, fractions);
  const row = middleRow(target, level);
  const n = fractions.length;
  return {
    level,
    base: target.base[row] ?? 0,
    of: (at: number) => (target.perLight[row * n + at] ?? 0) * (fractions[at] ?? 0),
  };
}

type Shares = ReturnType<typeof sharesOf>;

function hindranceOf(
  target: ReadyTarget,
  shares: Shares,
  bounds: readonly SolvedLight['bound'][],
): Hindrance | null {
  const miss = Math.log2(shares.level) - target.wantedStops;
  if (Math.abs(miss) <= MET_WITHIN_STOPS) return null;
  const wanted = ratioFromStops(target.wantedStops);
  if (miss > 0 && shares.base > wanted * ratioFromStops(MET_WITHIN_STOPS)) return 'bright-without-flash';
  // Only a light that matters here can be what it fails on: a tenth of the level, or of what is missing.
  const matters = Math.max(shares.level, wanted) / 10;
  if (miss < 0 && !bounds.some((bound, at) => bound !== 'full' && shares.of(at) > 0)) return 'too-weak';
  if (miss < 0 && bounds.some((bound, at) => bound === 'full' && shares.of(at) > matters)) return 'too-weak';
  if (miss > 0 && bounds.some((bound, at) => bound === 'least' && shares.of(at) > matters))
    return 'too-strong';
  return 'lights-disagree';
}

function neededStops(
  targets: readonly ReadyTarget[],
  all: readonly Shares[],
  at: number,
  powerStops: number,
): number | null {
  let main = -1;
  let most = 0;
  for (const [index, shares] of all.entries()) {
    const does = ((targets[index]?.weight ?? 0) * shares.of(at)) / shares.level;
    if (does > most) [main, most] = [index, does];
  }
  const [target, shares] = [targets[main], all[main]];
  if (!target || !shares) return null;
  const now = shares.of(at);
  const needed = now + ratioFromStops(target.wantedStops) - shares.level;
  return needed > 0 ? finiteOrNull(powerStops + Math.log2(needed / now)) : null;
}

/**
 * Powers of all flashes together, in ⅓ steps, that come nearest to all wanted levels: least squares in
 * stops. Every light reaches every target, so none can be set alone. First without steps, downhill from
 * three starts; then step by step, until no neighbouring choice is better, nor one with one light traded for another. A light that would have to leave
 * its range stays at the end of it. Where two choices come equally near, the one with less light is taken.
 *
 * @param problem lights with their least powers, and targets with light rows relative to correct exposure
 * @returns powers, levels, what each target fails on; every number finite. The search is local: nearly
 *   always, not provably, the best of all choices
 * @source levenberg-marquardt
 */
export function solvePowers(problem: PowerProblem): SolvedPowers {
  const columns = problem.lights.flatMap((light, index) => (light.isOff ? [] : [index]));
  const least = Int32Array.from(columns, (column) => {
    const thirds = Math.ceil((problem.lights[column]?.leastPowerStops ?? 0) * 3 - 1e-6);
    return Math.max(LOWEST_THIRDS, Math.min(0, thirds));
  });
  const targets = problem.targets.map((target) => readyTarget(target, columns));
  const { thirds, cost } = bestChoice(targets, least);
  const fractions = Float64Array.from(thirds, (third) => 2 ** (third / 3));
  const all = targets.map((target) => sharesOf(target, fractions));
  const bounds = Array.from(thirds, (third, at) => {
    if (third >= 0) return 'full';
    return third <= (least[at] ?? 0) ? 'least' : null;
  });
  return {
    lights: problem.lights.map(({ id }, index): SolvedLight => {
      const at = columns.indexOf(index);
      if (at < 0) return { id, powerStops: null, bound: null, neededStops: null };
      const powerStops = (thirds[at] ?? 0) / 3 + 0;
      return {
        id,
        powerStops,
        bound: bounds[at] ?? null,
        neededStops: neededStops(targets, all, at, powerStops),
      };
    }),
    targets: problem.targets.map(({ name }, index) => solvedTarget(name, targets[index], all[index], bounds)),
    cost: keepFinite(cost),
  };
}

function solvedTarget(
  name: string,
  target: ReadyTarget | undefined,
  shares: Shares | undefined,
  bounds: readonly SolvedLight['bound'][],
): SolvedTarget {
  const wantedStops = target?.wantedStops ?? 0;
  if (!target || !shares || Math.log2(shares.level) <= DARKEST_STOPS) {
    return { name, wantedStops, levelStops: null, missStops: null, hindrance: 'too-weak' };
  }
  const levelStops = Math.log2(shares.level);
  return {
    name,
    wantedStops,
    levelStops,
    missStops: levelStops - wantedStops,
    hindrance: hindranceOf(target, shares, bounds),
  };
}
