import { setUnits } from '../../../shared/document/commands/enter-night.ts';
import { LightLevel } from '../../parts/light-level/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import type { LeadState } from './lead-state.ts';

/** The moment that is on, the assistant's code, units and the light of the screen. */
export function MorePanel({ state }: { state: LeadState }) {
  const { doc, hand, night } = state.session;
  const known = night.value;
  if (!known) return null;
  const to = (panel: 'room' | 'gear' | 'plan' | 'order' | 'hands') => () => {
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
      <button type="button" class="main-key" onClick={to('order')}>
        {`Running order${known.next ? `: next ${known.next.name}` : ''}`}
      </button>
      <button type="button" onClick={to('plan')}>
        Plan of the room
      </button>
      <div class="two-keys">
        <button type="button" onClick={to('room')}>
          Room and its light
        </button>
        <button type="button" onClick={to('gear')}>
          Heads and modifiers
        </button>
      </div>
      <button type="button" onClick={to('hands')}>
        Hand signals
      </button>
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
