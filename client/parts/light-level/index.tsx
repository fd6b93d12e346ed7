import { signal } from '@preact/signals';

const KEY = 'hushmark/light';
const LEVELS = [
  ['dim', 'Dimmest'],
  ['dark', 'Dim'],
  ['bright', 'Bright'],
] as const;
type Level = (typeof LEVELS)[number][0];

function kept(): Level {
  try {
    const name = localStorage.getItem(KEY);
    return LEVELS.find(([level]) => level === name)?.[0] ?? 'dark';
  } catch {
    return 'dark';
  }
}

const level = signal<Level>(kept());

level.subscribe((name) => {
  document.documentElement.dataset.light = name;
  try {
    localStorage.setItem(KEY, name);
  } catch {
    // The level holds for this page, then.
  }
});

/** How much light the screen gives. A page cannot set the phone's own brightness. */
export function LightLevel() {
  return (
    <>
      <h3>Light of this screen</h3>
      <div class="three-keys">
        {LEVELS.map(([name, word]) => (
          <button
            key={name}
            type="button"
            aria-pressed={level.value === name}
            onClick={() => {
              level.value = name;
            }}
          >
            {word}
          </button>
        ))}
      </div>
      <p class="quiet">Turn the phone’s own brightness down as well: a page cannot.</p>
    </>
  );
}
