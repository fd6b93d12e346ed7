import './style.css';

/** One of a few, as keys in a row; the chosen one is pressed in. */
export function Choice<Value extends string>(props: {
  name: string;
  options: readonly (readonly [value: Value, word: string])[];
  value: Value | null;
  choose: (value: Value) => void;
}) {
  const { name, options, value, choose } = props;
  return (
    <fieldset class="choice">
      <legend>{name}</legend>
      {options.map(([option, word]) => (
        <button key={option} type="button" aria-pressed={option === value} onClick={() => choose(option)}>
          {word}
        </button>
      ))}
    </fieldset>
  );
}
