import type { Spot } from '../../../core/geometry/spot.ts';

/** How a mark is drawn: the further a call got, the more of the tape is filled. */
export type TapeLook = 'draft' | 'called' | 'seen' | 'carrying' | 'set' | 'trouble';

/** Two torn strips of tape, crossed. Torn ends, since tape is torn and not cut. */
const STRIPS = [
  'M-15-9.5l3-4.5 1.2 1 2.3 1.8L15 9l-2.6 4.6-1.6-.6-2.2-2.2z',
  'M10.6-13.8l4.4 4-1.2 1.6-1 2.2L-9.6 14l-4.9-3.4.6-1.8 1.6-1.9z',
];

/**
 * A mark: a tape cross with the stand's letter beside it.
 *
 * @param letter empty where a sign with the letter lies on it
 * @param at point of the screen, px
 */
export function TapeMark(props: { at: Spot; letter: string; job: 'key' | 'back'; look: TapeLook }) {
  const { at, letter, job, look } = props;
  return (
    <g class={`tape-mark tape-${job} look-${look}`} transform={`translate(${at.x} ${at.y})`}>
      {STRIPS.map((strip) => (
        <path key={strip} d={strip} />
      ))}
      {look === 'trouble' && <path class="trouble-sign" d="M0-30l10 17h-20zM0-25v6M0-17v2" />}
      {letter && (
        <g transform="translate(0 -26)" class="tape-letter">
          <rect x="-10" y="-10" width="20" height="20" rx="3" />
          <text dy="0.36em">{letter}</text>
        </g>
      )}
    </g>
  );
}
