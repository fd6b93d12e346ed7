import { useId, useState } from 'preact/hooks';
import '../number-field/style.css';

/** A line of text that is typed; an empty one is not taken, and the last stays. */
export function TextField(props: {
  name: string;
  value: string;
  longest: number;
  set: (value: string) => void;
}) {
  const { name, value, longest, set } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const leave = () => {
    const text = typed?.trim() ?? '';
    if (text !== '' && text !== value) set(text.slice(0, longest));
    setTyped(null);
  };
  return (
    <div class="number-field text-field">
      <label for={id}>{name}</label>
      <input
        id={id}
        type="text"
        maxLength={longest}
        value={typed ?? value}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={leave}
        onKeyDown={(event) => {
          if (event.key === 'Enter') leave();
        }}
      />
      {typed !== null && typed.trim() === '' && (
        <p role="alert" class="trouble">{`It needs a name: “${value}” stays.`}</p>
      )}
    </div>
  );
}
