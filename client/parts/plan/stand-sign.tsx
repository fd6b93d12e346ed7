import type { Spot } from '../../../core/geometry/spot.ts';

/**
 * Where a stand is: three legs seen from above and its letter; the key in a ring, the back light in a diamond,
 * with a short stroke toward where the head faces.
 *
 * @param at point of the screen, px
 * @param faceDeg where the head faces on the screen, degrees clockwise from up
 */
export function StandSign(props: { at: Spot; letter: string; job: 'key' | 'back'; faceDeg: number }) {
  const { at, letter, job, faceDeg } = props;
  return (
    <g class={`stand-sign sign-${job}`} transform={`translate(${at.x} ${at.y})`}>
      <path class="legs" d="M0 0V-17M0 0L15 9M0 0L-15 9" />
      <g transform={`rotate(${faceDeg})`}>
        <path class="faces" d="M0-12V-24M-5-20L0-25L5-20" />
      </g>
      {job === 'key' ? <circle r="11" /> : <path class="diamond" d="M0-14L14 0L0 14L-14 0Z" />}
      <text dy="0.36em">{letter}</text>
    </g>
  );
}
