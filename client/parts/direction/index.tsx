import './style.css';

/** `sure`: a way one can walk. `straight`: the line where nobody can. `felt`: turned by the phone's own sense, wide. */
export type ArrowLook = 'sure' | 'straight' | 'felt';

/** A strip of tape cut to an arrow. */
const TAPE = 'M0-46L33-7 29-3 13-6 12 44 4 41-4 45-12 42-13-6-30-2-33-7Z';
/** A phone that has been turned for a while is as sure as this to either side, degrees: an estimate. */
const WEDGE_HALF_DEG = 15;
const WEDGE_LENGTH = 89;
const WEDGE_FOOT = 40;

/** From where one stands, the angle to either side. */
function wedge(): string {
  const half = (WEDGE_HALF_DEG * Math.PI) / 180;
  const [x, y] = [WEDGE_LENGTH * Math.sin(half), WEDGE_FOOT - WEDGE_LENGTH * Math.cos(half)];
  return `M0 ${WEDGE_FOOT}L${-x} ${y}A${WEDGE_LENGTH} ${WEDGE_LENGTH} 0 0 1 ${x} ${y}Z`;
}

const WEDGE = wedge();

function Shape({ look }: { look: ArrowLook }) {
  if (look !== 'felt') return <path class={`is-${look}`} d={TAPE} />;
  return (
    <>
      <path class="is-felt" d={WEDGE} />
      <circle class="is-felt" cy={WEDGE_FOOT} r="8" />
    </>
  );
}

/**
 * Which way to go, against what one faces.
 *
 * @param turnDeg degrees clockwise from straight ahead; null for "stay"
 */
export function BigArrow(props: { turnDeg: number | null; said: string; look?: ArrowLook }) {
  const { turnDeg, said, look = 'sure' } = props;
  return (
    <svg
      class="big-arrow"
      viewBox="-50 -50 100 100"
      role="img"
      aria-label={said}
      data-turn={turnDeg ?? 'stay'}
      data-look={look}
    >
      {turnDeg === null ? (
        <rect x="-24" y="-24" width="48" height="48" rx="3" />
      ) : (
        <g transform={`rotate(${turnDeg})`}>
          <Shape look={look} />
        </g>
      )}
    </svg>
  );
}
