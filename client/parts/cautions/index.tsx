import type { Caution } from '../../../core/cautions/caution.ts';
import './style.css';

const LEVEL = { stop: '⛔︎ Stop', caution: '▲ Caution', info: 'ⓘ Note' } as const;

/** Every caution with its number, its limit and where that comes from. */
export function Cautions({ cautions }: { cautions: readonly Caution[] }) {
  return (
    <section class="cautions" aria-label="Cautions">
      <h3>Cautions</h3>
      {cautions.length === 0 && <p>No caution raised by these checks.</p>}
      <ul>
        {cautions.map((caution) => (
          <li key={caution.id} class={`is-${caution.level}`}>
            <b>{`${LEVEL[caution.level]}: ${caution.title}`}</b>
            <p>{caution.detail}</p>
            <p class="quiet">{caution.source}</p>
          </li>
        ))}
      </ul>
      <p class="quiet">
        Planning cautions from public standards and guidance; not legal, engineering or fire-safety advice,
        and no proof that a layout meets any code. Local rules and the venue’s own come first: ask the venue.
        Check the stand on the day, keep it attended, and take it down if the room fills or anyone asks.
      </p>
    </section>
  );
}
