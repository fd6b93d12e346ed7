import './style.css';

/** A key that opens the phone's own way of choosing a file. */
export function FileKey(props: { word: string; accept: string; take: (file: File) => void }) {
  const { word, accept, take } = props;
  return (
    <label class="file-key">
      {word}
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file can be chosen again after it was mended.
          event.currentTarget.value = '';
          if (file) take(file);
        }}
      />
    </label>
  );
}
