import { useMemo } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { FeatureKind } from '../../../shared/document/schema.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { placeLabels } from './label-layout.ts';
import { type PlanView, toScreen } from './plan-view.ts';

/** What one steers by keeps its name before what there are many of. */
const WEIGHTS: Partial<Record<FeatureKind, number>> = {
  exit: 9,
  bar: 8,
  band: 7,
  cake: 6,
  door: 5,
  table: 2,
  'dance-floor': 1,
};

/** An exit lies in a wall, where its name would cover it: the name stands a line farther into the room. */
function inward(at: Spot, view: PlanView): Spot {
  const x = view.widthPx / 2 - at.x;
  const y = view.heightPx / 2 - at.y;
  const away = Math.hypot(x, y) || 1;
  return { x: at.x + (x / away) * 15, y: at.y + (y / away) * 15 };
}

/** Names of the features, always upright however the plan is turned. */
export function FeatureNames(props: { night: Night; view: PlanView; signs: readonly Spot[] }) {
  const { night, view, signs } = props;
  const placed = useMemo(() => {
    const labels = night.features.map((feature) => ({
      id: feature.id,
      text: feature.kind === 'exit' ? `⇥ ${feature.name}` : feature.name,
      at: feature.kind === 'exit' ? inward(toScreen(view, feature.at), view) : toScreen(view, feature.at),
      weight: WEIGHTS[feature.kind] ?? 3,
    }));
    return placeLabels(labels, signs, view);
  }, [night.features, view, signs]);
  const exits = new Set<string>(night.features.filter(({ kind }) => kind === 'exit').map(({ id }) => id));
  return (
    <g class="feature-names">
      {placed.map((label) => (
        <text key={label.id} class={exits.has(label.id) ? 'is-exit' : ''} x={label.x} y={label.y} dy="0.35em">
          {label.text}
        </text>
      ))}
    </g>
  );
}
