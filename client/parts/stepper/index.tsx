import './style.css';

/** A value with a key on either side of it. */
export function Stepper(props: { name: string; value: string; less: () => void; more: () => void }) {
  const { name, value, less, more } = props;
  return (
    <fieldset class="stepper">
      <legend>{name}</legend>
      <button type="button" aria-label={`${name} down`} onClick={less}>
        −
      </button>
      <output>{value}</output>
      <button type="button" aria-label={`${name} up`} onClick={more}>
        +
      </button>
    </fieldset>
  );
}
