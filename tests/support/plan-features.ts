import type { FeatureValue } from '../../shared/document/check-features.ts';

/** A round table for ten at a spot; the numbers are the usual ones of hired tables (*common practice*). */
export const tableAt = (x: number, y: number, rest: Partial<FeatureValue> = {}): FeatureValue => ({
  kind: 'table',
  name: 'Table',
  at: { x, y },
  turnDeg: 0,
  shape: { kind: 'round', radiusM: 0.9 },
  heightM: 0.75,
  blocksLight: false,
  blocksWalking: true,
  chairs: true,
  background: 'neither',
  ...rest,
});

/** A rectangle of walls from the plan's origin. */
export const boxOutline = (widthM: number, depthM: number) => [
  { x: 0, y: 0 },
  { x: widthM, y: 0 },
  { x: widthM, y: depthM },
  { x: 0, y: depthM },
];

/** A bow tie: its long edges cross in the middle. */
export const CROSSING = [
  { x: 0, y: 0 },
  { x: 4, y: 4 },
  { x: 4, y: 0 },
  { x: 0, y: 4 },
];

/** An empty room of so many metres under a flat ceiling of 4 m. */
export const emptyPlan = (widthM: number, depthM: number) => ({
  room: { outline: boxOutline(widthM, depthM), ceilingM: 4 },
  roof: { kind: 'flat' as const },
  finishes: { ceiling: 0.7, walls: 0.5, floor: 0.2 },
});
