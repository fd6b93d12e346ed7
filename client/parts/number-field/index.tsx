import { useId, useState } from 'preact/hooks';
import { type NumberLimits, readNumber } from './read-number.ts';
import './style.css';

/**
 * A number that is typed. What cannot be used is said under the field and goes nowhere: the last good value stays
 * where it was until a better one is typed.
 */
export function NumberField(props: {
  name: string;
  unit: string;
  /** What is in use; null where nobody has said. */
  value: number | null;
  limits: NumberLimits;
  set: (value: number) => void;
}) {
  const { name, unit, value, limits, set } = props;
  const shown = value === null ? '' : String(Number(value.toFixed(limits.decimals)));
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const reading = typed === null ? null : readNumber(typed, unit, limits);
  const trouble = reading && !reading.ok ? reading.reason : null;
  const stays = shown === '' ? 'Nothing is in use yet.' : `${shown}${unit ? ` ${unit}` : ''} stays in use.`;
  const leave = () => {
    // An empty field that was never filled is left as it was.
    if (typed === '' && shown === '') setTyped(null);
    if (reading?.ok) {
      if (shown === '' || reading.value !== Number(shown)) set(reading.value);
      setTyped(null);
    }
  };
  return (
    <div class="number-field">
      <label for={id}>{name}</label>
      <span class="field-line">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          placeholder="not known"
          value={typed ?? shown}
          aria-invalid={trouble !== null}
          aria-describedby={`${id}-said`}
          onInput={(event) => setTyped(event.currentTarget.value)}
          onBlur={leave}
          onKeyDown={(event) => {
            if (event.key === 'Enter') leave();
            if (event.key === 'Escape' && typed !== null) {
              event.stopPropagation();
              setTyped(null);
            }
          }}
        />
        <span class="unit">{unit}</span>
      </span>
      <p id={`${id}-said`} role="alert" class="trouble">
        {trouble ? `${trouble} ${stays}` : ''}
      </p>
    </div>
  );
}
