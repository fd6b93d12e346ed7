import './style.css';

/**
 * A strip of tape cut to an arrow: which way to go, against what one faces.
 *
 * @param turnDeg degrees clockwise from straight ahead; null for "stay"
 */
export function BigArrow({ turnDeg, said }: { turnDeg: number | null; said: string }) {
  return (
    <svg
      class="big-arrow"
      viewBox="-50 -50 100 100"
      role="img"
      aria-label={said}
      data-turn={turnDeg ?? 'stay'}
    >
      {turnDeg === null ? (
        <rect x="-24" y="-24" width="48" height="48" rx="3" />
      ) : (
        <path
          transform={`rotate(${turnDeg})`}
          d="M0-46L33-7 29-3 13-6 12 44 4 41-4 45-12 42-13-6-30-2-33-7Z"
        />
      )}
    </svg>
  );
}
