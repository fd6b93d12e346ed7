import type { Spot } from '../../../core/geometry/spot.ts';
import { type PlanView, planTransform, toScreen } from './plan-view.ts';

const SIZE_PX = 132;
const TIMES = 2.6;
const AWAY_PX = 96;

/** Lines every half metre of the plan, in metres, so that the eye has a measure. */
function halfMetres(spot: Spot, acrossM: number): string {
  const lines: string[] = [];
  const from = (value: number) => Math.floor((value - acrossM) * 2) / 2;
  for (let away = 0; away <= acrossM * 2; away += 0.5) {
    const [x, y] = [from(spot.x) + away, from(spot.y) + away];
    lines.push(`M${x} ${spot.y - acrossM}V${spot.y + acrossM}M${spot.x - acrossM} ${y}H${spot.x + acrossM}`);
  }
  return lines.join('');
}

/**
 * The floor around a draft mark, magnified, beside the finger and never under it. It goes to the side with more
 * room and stays inside the drawing.
 *
 * @param drawing id of the room drawing, which is used again here instead of being drawn twice
 */
export function Loupe(props: { spot: Spot; view: PlanView; drawing: string; letter: string }) {
  const { spot, view, drawing, letter } = props;
  const at = toScreen(view, spot);
  const side = at.x < view.widthPx / 2 ? 1 : -1;
  const left = Math.min(Math.max(at.x + side * AWAY_PX - SIZE_PX / 2, 4), view.widthPx - SIZE_PX - 4);
  const top = Math.min(Math.max(at.y - SIZE_PX / 2 - 20, 4), view.heightPx - SIZE_PX - 4);
  const near: PlanView = {
    ...view,
    centre: spot,
    pxPerM: view.pxPerM * TIMES,
    widthPx: SIZE_PX,
    heightPx: SIZE_PX,
  };
  const middle = SIZE_PX / 2;
  return (
    <div class="loupe" style={{ left: `${left}px`, top: `${top}px` }} aria-hidden="true">
      <svg viewBox={`0 0 ${SIZE_PX} ${SIZE_PX}`}>
        <title>{`Floor around ${letter}`}</title>
        <use href={`#${drawing}`} transform={planTransform(near)} />
        <path
          class="half-metres"
          transform={planTransform(near)}
          d={halfMetres(spot, SIZE_PX / near.pxPerM)}
        />
        <path class="leader" d={`M${middle} 8V${SIZE_PX - 8}M8 ${middle}H${SIZE_PX - 8}`} />
      </svg>
    </div>
  );
}
