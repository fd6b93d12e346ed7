import { isSimple } from '../../core/geometry/polygon.ts';
import { type Refused, refuse, refuseField } from './outcome.ts';
import { type Entry, entrySchemas } from './schema.ts';

export type FeatureValue = Entry<'feature'>;

/** A feature that may stand on a plan: it fits the schema, and an outline of its own neither crosses nor touches itself. */
export function checkedFeature(
  value: unknown,
): { readonly ok: true; readonly feature: FeatureValue } | Refused {
  const checked = entrySchemas.feature.safeParse(value);
  if (!checked.success) return refuseField(checked.error);
  const { shape } = checked.data;
  if (shape.kind === 'outline' && !isSimple(shape.points)) return refuse('crossing-outline');
  return { ok: true, feature: checked.data };
}

/**
 * Checks many features together: all of them, or the refusal of the first that does not fit.
 *
 * @param values by id
 */
export function checkedFeatures(
  values: Iterable<readonly [string, unknown]>,
): { readonly ok: true; readonly features: readonly (readonly [string, FeatureValue])[] } | Refused {
  const features: (readonly [string, FeatureValue])[] = [];
  for (const [id, value] of values) {
    const one = checkedFeature(value);
    if (!one.ok) return one;
    features.push([id, one.feature]);
  }
  return { ok: true, features };
}
