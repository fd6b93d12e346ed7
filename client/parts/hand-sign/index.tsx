import './style.css';

/** Root and tip of each finger of a raised hand, the index first; the fifth to go up is the thumb. */
const FINGERS = ['M18 46L15 12', 'M29 43L29 6', 'M40 44L43 10', 'M50 49L57 22', 'M12 62L-3 44'] as const;
/** The same fingers folded. */
const FOLDED = ['M18 46V43', 'M29 44V41', 'M40 45V42', 'M49 50V48', 'M16 62Q28 68 38 60'] as const;
const PALM = 'M12 46Q31 36 55 48L51 78Q32 90 16 78Z';

/** One hand with so many fingers up; none is a fist. */
function Hand({ fingers }: { fingers: number }) {
  return (
    <svg class="hand" viewBox="-8 0 74 96" aria-hidden="true">
      <path class="palm" d={PALM} />
      {FOLDED.slice(fingers).map((finger) => (
        <path key={finger} class="folded" d={finger} />
      ))}
      {FINGERS.slice(0, fingers).map((finger) => (
        <path key={finger} class="finger" d={finger} />
      ))}
    </svg>
  );
}

/** Finger and thumb a little apart: less than a step. */
function Pinch() {
  return (
    <svg class="hand" viewBox="-8 0 74 96" aria-hidden="true">
      <path class="palm" d={PALM} />
      {FOLDED.slice(1, 4).map((finger) => (
        <path key={finger} class="folded" d={finger} />
      ))}
      <path class="finger" d="M20 44Q18 18 2 20M13 64Q-6 56 -2 40" />
    </svg>
  );
}

/** A number on the hands: a fist is ten, a finger one. */
export function FingerCount({ count }: { count: number }) {
  if (count < 1) return <Pinch />;
  const fists = Math.min(9, Math.floor(count / 10));
  const rest = count % 10;
  return (
    <>
      {Array.from({ length: fists }, (_, index) => (
        <Hand key={`fist ${index}`} fingers={0} />
      ))}
      {rest > 0 && <Hand fingers={Math.min(rest, 5)} />}
      {rest > 5 && <Hand fingers={rest - 5} />}
    </>
  );
}

/**
 * Somebody from above, an arm stretched out; at the top the one they look at.
 *
 * @param armDeg where the arm points, clockwise from straight ahead
 */
export function PointingFigure({ armDeg }: { armDeg: number }) {
  return (
    <svg class="pointing" viewBox="-62 -84 124 140" aria-hidden="true">
      <g class="other">
        <rect x="-19" y="-75" width="38" height="11" rx="5" />
        <circle cy="-70" r="8" />
        <path class="sight" d="M0-56V-20" />
      </g>
      <rect x="-25" y="-7" width="50" height="14" rx="7" />
      <circle class="head" r="11" />
      <g transform={`rotate(${armDeg})`}>
        <path class="arm" d="M0-12V-46M-10-36L0-48L10-36" />
      </g>
    </svg>
  );
}

/** Both palms held down: stay. */
export function PalmsDown() {
  return (
    <svg class="pointing" viewBox="-60 -50 120 100" aria-hidden="true">
      <path class="arm" d="M-40-30V10M40-30V10" />
      <path class="shoulders" d="M-54 12H-26V20H-54ZM26 12H54V20H26Z" />
    </svg>
  );
}
