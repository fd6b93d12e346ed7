import { centroidOf } from '../geometry/polygon.ts';
import type { Spot } from '../geometry/spot.ts';

/** Something that a person finds in the room without a plan. Outline and height in metres. */
export type Landmark = {
  readonly id: string;
  readonly name: string;
  readonly outline: readonly Spot[];
  readonly heightM: number;
  /** Seen over a standing crowd: a band, a bar's back wall, a pillar */
  readonly tall: boolean;
};

/** What a sentence needs to name a landmark. */
export type LandmarkName = { readonly id: string; readonly name: string };

/** @returns where one walks when walking "toward" a landmark: its middle [m] */
export function middleOf(landmark: Landmark): Spot {
  return centroidOf(landmark.outline);
}

/**
 * A landmark's name inside a sentence: "the bar", "table 4", "the DJ".
 *
 * @param name as people typed it; a name that ends in a number or one letter needs no article
 */
export function spokenName(name: string): string {
  const trimmed = name.trim();
  // "Bar" loses its capital in a sentence, "DJ" keeps both.
  const inSentence = /^\p{Lu}\p{Ll}/u.test(trimmed)
    ? trimmed.charAt(0).toLowerCase() + trimmed.slice(1)
    : trimmed;
  const needsNoArticle = /^the\s/i.test(trimmed) || /\s(\d+|\p{L})$/u.test(trimmed);
  return needsNoArticle ? inSentence : `the ${inSentence}`;
}
