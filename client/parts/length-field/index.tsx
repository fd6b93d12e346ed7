import { feetFromMetres, metresFromFeet } from '../../../core/units/length.ts';
import type { Units } from '../../../shared/document/schema.ts';
import { NumberField } from '../number-field/index.tsx';

/** A length that is typed, in the units of the night. */
export function LengthField(props: {
  name: string;
  units: Units;
  /** What is in use; null where nobody has said. */
  valueM: number | null;
  leastM: number;
  mostM: number;
  set: (valueM: number) => void;
}) {
  const { name, units, valueM, leastM, mostM, set } = props;
  const metric = units === 'metric';
  const shown = (lengthM: number) => (metric ? lengthM : Math.round(feetFromMetres(lengthM) * 10) / 10);
  return (
    <NumberField
      name={name}
      unit={metric ? 'm' : 'ft'}
      value={valueM === null ? null : shown(valueM)}
      limits={{ least: shown(leastM), most: shown(mostM), decimals: 2 }}
      // A limit shown in rounded feet may lie a little outside the one in metres.
      set={(value) => set(Math.min(mostM, Math.max(leastM, metric ? value : metresFromFeet(value))))}
    />
  );
}
