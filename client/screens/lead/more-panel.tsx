import { startMoment } from '../../../shared/document/commands/change-moment.ts';
import { setUnits } from '../../../shared/document/commands/enter-night.ts';
import { LightLevel } from '../../parts/light-level/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { REFUSED } from '../../words/refusal-words.ts';
import type { LeadState } from './lead-state.ts';

/** The moment that is on, the assistant's code, units and the light of the screen. */
export function MorePanel({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const known = night.value;
  if (!known) return null;
  const start = (momentId: string, name: string) => {
    const outcome = startMoment(doc, hand, momentId);
    const was = known.moment;
    const back = was ? () => void startMoment(doc, hand, was.id) : null;
    state.notice.value = outcome.ok
      ? { text: `${name} is on.`, undo: back }
      : { text: REFUSED[outcome.reason], undo: null };
  };
  const to = (panel: 'room' | 'gear') => () => {
    state.panelBehind.value = 'more';
    state.panel.value = panel;
  };
  return (
    <SheetPanel
      title={known.about?.title ?? 'Night'}
      close={() => {
        state.panel.value = 'none';
      }}
    >
      <button
        type="button"
        onClick={() => {
          state.panel.value = 'invite';
        }}
      >
        Code for the assistant’s phone
      </button>
      <div class="two-keys">
        <button type="button" onClick={to('room')}>
          Room and its light
        </button>
        <button type="button" onClick={to('gear')}>
          Heads and modifiers
        </button>
      </div>
      <h3>Running order</h3>
      <ul class="moment-keys">
        {known.moments.map((moment) => (
          <li key={moment.id}>
            <button
              type="button"
              aria-pressed={moment.id === known.moment?.id}
              onClick={() => start(moment.id, moment.name)}
            >
              {`${moment.expected ?? ''} ${moment.name}${moment.id === known.moment?.id ? ': on' : ''}`}
            </button>
          </li>
        ))}
      </ul>
      <h3>Lengths</h3>
      <div class="two-keys">
        {(['metric', 'imperial'] as const).map((units) => (
          <button
            key={units}
            type="button"
            aria-pressed={known.units === units}
            onClick={() => void setUnits(doc, hand, units)}
          >
            {units === 'metric' ? 'Metres' : 'Feet'}
          </button>
        ))}
      </div>
      <LightLevel />
    </SheetPanel>
  );
}
