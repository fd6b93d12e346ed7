import type { Spot } from '../../../core/geometry/spot.ts';
import type { Entry, FeatureKind } from '../../../shared/document/schema.ts';
import type { FoundFeature } from '../../import/room-from-shapes.ts';
import { freshName, STAMPS } from './stamps.ts';

/** What drawings call things, in the languages that venues draw in most; the first that fits is taken. */
const CALLED: readonly (readonly [RegExp, FeatureKind])[] = [
  [/exit|ausgang|sortie|salida|uscita/i, 'exit'],
  [/door|tür|tuer|porte|puerta/i, 'door'],
  [/danc|tanz|piste|baile/i, 'dance-floor'],
  [/cake|torte|gâteau|gateau/i, 'cake'],
  [/band|stage|bühne|buehne|\bdj\b|scène/i, 'band'],
  [/pillar|column|säule|saeule|pilier|columna/i, 'pillar'],
  [/\bbar\b|theke|tresen/i, 'bar'],
  [/screen|leinwand|écran/i, 'screen'],
  [/table|tisch|mesa|tavol/i, 'table'],
];

/** What a thing of a drawing most likely is: by what it is called, else a round one is a table. */
function kindOf({ name, shape }: FoundFeature): FeatureKind {
  const called = CALLED.find(([pattern]) => pattern.test(name));
  return called?.[1] ?? (shape.kind === 'round' ? 'table' : 'other');
}

/** A thing of a drawing as a feature of the plan: where and as large as drawn, the rest as such things usually are. */
export function featureFrom(
  found: FoundFeature,
  taken: readonly { readonly name: string }[],
): Entry<'feature'> {
  const { word, ...usual } = STAMPS[kindOf(found)];
  const at: Spot = found.at;
  const name = freshName(found.name.trim().slice(0, 60) || word, taken);
  return { ...usual, name, at, turnDeg: found.turnDeg, shape: shapeOf(found) };
}

/** The document's own value: lists in it can be written, those of a drawing cannot. */
function shapeOf({ shape }: FoundFeature): Entry<'feature'>['shape'] {
  return shape.kind === 'outline' ? { kind: 'outline', points: [...shape.points] } : shape;
}
