import { useMemo } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import { type PlanView, planTransform, toScreen } from '../plan/plan-view.ts';
import { isoLabels } from './iso-labels.ts';
import type { IsoLine } from './iso-lines.ts';
import './style.css';

const inMetres = (points: readonly Spot[]): string =>
  points
    .map((point, index) => `${index === 0 ? 'M' : 'L'}${point.x.toFixed(2)} ${point.y.toFixed(2)}`)
    .join('');

/** All lines of a level as one path: while a finger moves the path changes, and no element comes or goes. */
function pathsOf(lines: readonly IsoLine[]): Map<number, string> {
  const paths = new Map<number, string>();
  for (const { stops, points } of lines) paths.set(stops, (paths.get(stops) ?? '') + inMetres(points));
  return paths;
}

/** "+1", "0", "−2": told apart by the dashes of the line and by the number, never by colour alone. */
const sign = (stops: number): string => (stops > 0 ? `+${stops}` : stops < 0 ? `−${-stops}` : '0');
const kind = (stops: number): string => (stops > 0 ? 'over' : stops < 0 ? 'under' : 'right');

/**
 * Lines of equal light over the plan, at the height of faces. Where it is right the line is heavy; over it is
 * drawn through, under it is dashed, the darker the shorter the dashes.
 *
 * @param signs where stands and the like are drawn, px: numbers keep off them
 */
export function LightMap(props: {
  lines: readonly IsoLine[];
  outline: readonly Spot[];
  view: PlanView;
  signs: readonly Spot[];
}) {
  const { lines, outline, view, signs } = props;
  const labels = useMemo(
    () => isoLabels(lines, outline, (spot) => toScreen(view, spot), signs),
    [lines, outline, view, signs],
  );
  return (
    <g class="light-map">
      <clipPath id="light-map-room">
        <path d={`${inMetres(outline)}Z`} />
      </clipPath>
      <g transform={planTransform(view)}>
        <g clip-path="url(#light-map-room)">
          {[...pathsOf(lines)].map(([stops, d]) => (
            <path
              key={stops}
              data-stops={stops}
              class={`iso is-${kind(stops)} by-${Math.min(4, Math.abs(stops))}`}
              d={d}
            />
          ))}
        </g>
      </g>
      {labels.map(({ stops, nth, at }) => (
        <text key={`${stops}:${nth}`} class={`iso-number is-${kind(stops)}`} x={at.x} y={at.y} dy="0.36em">
          {sign(stops)}
        </text>
      ))}
    </g>
  );
}
