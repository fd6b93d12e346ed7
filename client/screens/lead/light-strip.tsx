import { powerLabel } from '../../../core/units/power.ts';
import { angleWords, frameWords, heightWords, powerAdvice, stopsWords } from '../../words/light-words.ts';
import type { LeadState } from './lead-state.ts';

/** The worst caution in one line; the light sheet has all of them whole. */
function WorstCaution({ state }: { state: LeadState }) {
  const [worst] = state.cautions.value;
  const count = state.cautions.value.filter(({ level }) => level !== 'info').length;
  if (!worst || worst.level === 'info') return <span class="quiet">No caution raised by these checks</span>;
  const more = count > 1 ? ` (+${count - 1})` : '';
  return (
    <span class={`worst is-${worst.level}`}>
      {`${worst.level === 'stop' ? '■ Stop' : '▲ Caution'}${more}: ${worst.title}. ${worst.detail}`}
    </span>
  );
}

/**
 * The numbers of the chosen stand where it is meant to be. They follow the finger, so the lines keep their places
 * and their height: a plan that moves under a finger that points is of no use.
 */
export function LightStrip({ state }: { state: LeadState }) {
  const sheet = state.sheet.value;
  const stand = state.stand.value;
  const mark = state.mark.value;
  if (!stand || !mark || !sheet) return null;
  const open = () => {
    state.panel.value = 'light';
  };
  const { letter } = stand.kit;
  const units = state.session.night.value?.units ?? 'metric';
  return (
    <button type="button" class="light-strip" onClick={open} aria-label={`Light sheet of ${letter}`}>
      {sheet.kind === 'cannot' ? (
        <>
          <b class="power">{letter}</b>
          <span class="trouble reason">{sheet.reason}</span>
        </>
      ) : (
        <>
          <span class="power">
            <b>{`${letter} ${powerLabel(mark.powerStops)}`}</b>
            {` subject ${stopsWords(sheet.totalStops)}`}
          </span>
          <span>{powerAdvice(sheet)}</span>
          <span>{angleWords(sheet)}</span>
          <span>
            {`${heightWords(sheet, units)}; `}
            <i class={sheet.inFrame.part === 'none' ? 'quiet' : 'trouble'}>{frameWords(sheet, letter)}</i>
          </span>
        </>
      )}
      <WorstCaution state={state} />
    </button>
  );
}
