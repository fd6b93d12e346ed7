import { degFromRad } from '../geometry/angle.ts';
import { dot, type Spot } from '../geometry/spot.ts';
import { isPositive, keepFinite } from '../units/finite.ts';
import { windForForceMs } from './wind.ts';

/**
 * A stand as built up. The column is at (0, 0), the first leg along x, legs evenly around; metres, kg.
 * - legRadiusM: from the column to a foot
 * - standCgM, ballastCgM: heights of the centres of gravity of stand and ballast
 * - ballastAt: where the ballast hangs, from the column
 * - headAt: where head and umbrella hang, from the column (on the column when absent)
 */
export type StandBuild = {
  readonly legs: number;
  readonly legRadiusM: number;
  readonly standKg: number;
  readonly standCgM: number;
  readonly headKg: number;
  readonly ballastKg: number;
  readonly ballastAt: Spot;
  readonly ballastCgM: number;
  readonly headAt?: Spot | undefined;
};

/** Standard gravity [m/s²]. @source standard-gravity */
const GRAVITY = 9.80665;

type Edge = { readonly normal: Spot; readonly directionDeg: number; readonly distanceM: number };
type Mass = { readonly kg: number; readonly at: Spot; readonly heightM: number };

/**
 * Shortest distance from the column to a line between two neighbouring feet: r·cos(π/n).
 *
 * @param legs number n of evenly spaced legs, at least 3
 * @param legRadiusM r, from the column to a foot [m]
 * @returns distance [m]; 0 for fewer than three legs
 * @source statics-tipping
 */
export function edgeDistance(legs: number, legRadiusM: number): number {
  return legs >= 3 ? keepFinite(legRadiusM * Math.cos(Math.PI / Math.floor(legs))) : 0;
}

/** Most legs that are computed one by one; nobody builds more. */
const MOST_LEGS = 12;

function edgesOfFeet({ legs, legRadiusM }: StandBuild): Edge[] {
  const count = legs >= 3 ? Math.min(MOST_LEGS, Math.floor(legs)) : 0;
  return Array.from({ length: count }, (_, index) => {
    const direction = ((2 * index + 1) * Math.PI) / count;
    return {
      normal: { x: Math.cos(direction), y: Math.sin(direction) },
      directionDeg: degFromRad(direction),
      distanceM: edgeDistance(count, legRadiusM),
    };
  });
}

function massesOf(build: StandBuild, headHeightM: number): Mass[] {
  const column = { x: 0, y: 0 };
  return [
    { kg: build.standKg, at: column, heightM: build.standCgM },
    { kg: build.headKg, at: build.headAt ?? column, heightM: headHeightM },
    { kg: build.ballastKg, at: build.ballastAt, heightM: build.ballastCgM },
  ];
}

/**
 * Weight of everything.
 *
 * @returns [N]
 * @source standard-gravity
 */
export function weightN(build: StandBuild): number {
  return keepFinite(GRAVITY * (build.standKg + build.headKg + build.ballastKg));
}

/**
 * Moment that holds the stand up, about each line between two neighbouring feet:
 * Rᵢ = g·Σ mⱼ·(d − n̂ᵢ·pⱼ). Negative: it falls over that line by itself.
 *
 * @returns one moment per edge [N·m], edge i between legs i and i + 1; empty for fewer than three legs
 * @source statics-tipping
 */
export function restoringMoments(build: StandBuild): number[] {
  const masses = massesOf(build, 0);
  return edgesOfFeet(build).map((edge) =>
    keepFinite(
      GRAVITY * masses.reduce((sum, m) => sum + m.kg * (edge.distanceM - dot(edge.normal, m.at)), 0),
    ),
  );
}

/**
 * Horizontal push that just tips the stand, in the worst direction: min Rᵢ/h. Along a leg of a stand
 * with central load it takes 1/cos(π/n) as much; with three legs twice as much.
 *
 * @param pushHeightM h, where the push acts [m]
 * @returns force [N]; 0 when it does not stand by itself; null when h is not above zero
 * @source statics-tipping
 */
export function tipForce(build: StandBuild, pushHeightM: number): number | null {
  if (!isPositive(pushHeightM)) return null;
  const moments = restoringMoments(build);
  if (moments.length === 0) return 0;
  return Math.max(0, keepFinite(Math.min(...moments) / pushHeightM));
}

/**
 * Horizontal push that just tips the stand when it acts in one direction: min Rᵢ/(h·cos(θ − φᵢ)).
 *
 * @param towardDeg direction of the push from the first leg toward the second [°]
 * @returns force [N]; null when h is not above zero or there are fewer than three legs
 * @source statics-tipping
 */
export function tipForceToward(build: StandBuild, pushHeightM: number, towardDeg: number): number | null {
  if (!isPositive(pushHeightM)) return null;
  const moments = restoringMoments(build);
  const forces = edgesOfFeet(build).flatMap((edge, index) => {
    const share = Math.cos((((towardDeg - edge.directionDeg) % 360) * Math.PI) / 180);
    return share > 1e-9 ? [(moments[index] ?? 0) / (pushHeightM * share)] : [];
  });
  return forces.length > 0 ? Math.max(0, keepFinite(Math.min(...forces))) : null;
}

/**
 * Slope at which the stand tips, over its weakest edge: atan(d/h_cg).
 *
 * @param headHeightM height of the head [m]
 * @returns angle [°], 0–90; 0 when it does not stand by itself; null without any mass
 * @source statics-tipping
 */
export function tipTiltDeg(build: StandBuild, headHeightM: number): number | null {
  const masses = massesOf(build, headHeightM);
  const kg = masses.reduce((sum, m) => sum + m.kg, 0);
  const moments = restoringMoments(build);
  if (!isPositive(kg) || moments.length === 0) return null;
  const centreHeightM = keepFinite(masses.reduce((sum, m) => sum + (m.kg / kg) * m.heightM, 0));
  const reachM = Math.max(0, keepFinite(Math.min(...moments) / GRAVITY / kg));
  return degFromRad(Math.atan2(reachM, Math.max(0, centreHeightM)));
}

/**
 * Gust that tips the stand in the worst direction, the umbrella being a sail at head height. An estimate:
 * pole drag, lift, cloth porosity and flexing are left out.
 *
 * @param umbrella its diameter [m] and drag coefficient [1] (1.42 when absent)
 * @param margin factor on the force [1]; 1.5 is the traditional margin against overturning
 * @returns speed at the umbrella [m/s]; null when there is nothing to compute with
 * @source statics-tipping
 * @source asce7-wind
 */
export function criticalWind(
  build: StandBuild,
  headHeightM: number,
  umbrella: { readonly diameterM: number; readonly drag?: number },
  margin = 1,
): number | null {
  const forceN = tipForce(build, headHeightM);
  if (forceN === null || !isPositive(margin)) return null;
  return windForForceMs(forceN / margin, umbrella.diameterM, umbrella.drag);
}

/**
 * Ballast, hung centrally, that a stand needs to withstand a horizontal push in its worst direction.
 *
 * @param forceN push [N]
 * @param pushHeightM where it acts [m]
 * @returns mass to add to the stand's present load [kg]; 0 when none is needed; null without a footprint
 * @source statics-tipping
 */
export function ballastForPushKg(build: StandBuild, forceN: number, pushHeightM: number): number | null {
  const reachM = edgeDistance(build.legs, build.legRadiusM);
  const moments = restoringMoments(build);
  if (!isPositive(reachM) || moments.length === 0) return null;
  const lacking = forceN * pushHeightM - Math.min(...moments);
  return Math.max(0, keepFinite(lacking / (GRAVITY * reachM)));
}
