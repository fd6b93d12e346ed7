import type { Spot } from '../geometry/spot.ts';

type FeatureKind =
  | 'dance-floor'
  | 'table'
  | 'bar'
  | 'band'
  | 'cake'
  | 'pillar'
  | 'door'
  | 'exit'
  | 'screen'
  | 'other';

/** A thing on the plan as it is drawn: `outline` already lies where the thing stands, turned [m]. */
export type PlanFeature = {
  readonly id: string;
  readonly kind: FeatureKind;
  readonly name: string;
  readonly at: Spot;
  /** Clockwise turn about `at` [°] */
  readonly turnDeg: number;
  readonly outline: readonly Spot[];
  readonly blocksWalking: boolean;
};
