import type { FeatureInFrame } from '../frame/frame-stats.ts';
import type { LightInFrame } from '../frame/lights-in-frame.ts';
import type { LitSide } from '../frame/lit-sides.ts';
import type { Silhouette } from '../frame/silhouette.ts';
import type { PatternName } from '../pattern.ts';
import type { Advice } from '../powers/advice.ts';
import type { SolvedPowers } from '../powers/solve-powers.ts';
import type { DepthOfField } from '../subject/depth-of-field.ts';
import type { ShadowLanding } from '../subject/shadow-landing.ts';
import type { Softness } from '../subject/softness.ts';
import type { SubjectLevels } from '../subject/subject-levels.ts';

/** A level with its spread: one standard deviation each way [stops]; null where there is no light. */
export type Spread = { readonly stops: number; readonly sdStops: number };

/** One light of the report. */
export type UnitReport = {
  readonly id: string;
  readonly letter: string;
  /** At its power, straight, on an element at the subject that faces it [stops over correct]; null for none */
  readonly facingStops: number | null;
  /** At its power, what the room returns of it to the face [stops]; null for none */
  readonly returnedStops: number | null;
  /** Straight and returned, at FULL power, as a meter at the face reads them [lx·s]: for the sheet */
  readonly straightLuxSeconds: number;
  readonly returnedLuxSeconds: number;
  /** What other lights give a meter at the face, at their powers [lx·s] */
  readonly othersLuxSeconds: number;
  /** How the camera sees it; null for the flash on the camera itself */
  readonly seen: LightInFrame | null;
  /** At the solved power; null when nobody has said */
  readonly recycleS: number | null;
  readonly flashesLeft: number | null;
};

/** What the camera sees, in numbers and as a small picture. */
export type FrameReport = {
  readonly columns: number;
  readonly rows: number;
  readonly grey: Uint8ClampedArray;
  readonly background: Spread | null;
  /** Shares of the frame under −4 and over +2½ stops [1] */
  readonly darkFraction: number;
  readonly brightFraction: number;
  readonly features: readonly FeatureInFrame[];
  /** Share of the frame that lies behind the back light and is black [1]; null without one */
  readonly darkBehindFraction: number | null;
  /** The subject's outline in the picture, and which sides of its head are lit */
  readonly silhouette: Silhouette | null;
  readonly lit: readonly LitSide[];
};

/** The subject's light, all of it. */
export type SubjectReport = SubjectLevels & {
  /** `totalStops` and `rimStops` with their spread */
  readonly total: Spread | null;
  readonly rim: Spread | null;
  readonly pattern: PatternName | null;
  readonly softness: Softness | null;
  readonly shadow: ShadowLanding | null;
  /** Brightest over darkest across the group [stops]; null when a place has no light */
  readonly evennessStops: number | null;
  readonly depthOfField: DepthOfField | null;
  /** Chance that nobody on a full floor stands between key and face, heads, and raised hands [1] */
  readonly clearFaceChance: number | null;
  readonly clearOfHandsChance: number | null;
};

/** Levels over the plan at face height, row by row from the upper left point. */
export type LevelMap = {
  readonly columns: number;
  readonly rows: number;
  readonly left: number;
  readonly top: number;
  readonly stepM: number;
  /** [stops over correct]; −99 where no light comes and outside the room */
  readonly stops: Float64Array;
  /** 1 for a point inside the room, 0 outside */
  readonly inside: Uint8Array;
};

/** What the test frames have taught of one unknown, against what the list says [stops]. */
export type Learnt = { readonly id: string; readonly meanStops: number; readonly sdStops: number };

/** The test frame that would narrow the numbers most. */
export type NextFrame = {
  /** The lights to fire; none for the ambient alone */
  readonly unitIds: readonly string[];
  readonly what: 'subject' | 'rim';
  /** Spread of the subject's level before and after it [stops] */
  readonly beforeStops: number;
  readonly afterStops: number;
};

/** Everything that follows from a room, its lights, camera and subject. */
export type LightReport = {
  readonly kind: 'report';
  readonly units: readonly UnitReport[];
  readonly subject: SubjectReport;
  readonly frame: FrameReport;
  readonly map: LevelMap;
  readonly powers: SolvedPowers;
  readonly advice: readonly Advice[];
  readonly learnt: readonly Learnt[];
  readonly next: NextFrame | null;
};

export type CannotReport = { readonly kind: 'cannot'; readonly reason: string };
