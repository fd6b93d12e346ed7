import type { LightSheet } from '../../../core/light/light-sheet.ts';
import { powerLabel } from '../../../core/units/power.ts';
import { spreadWords } from '../../words/frame-words.ts';
import { angleWords, frameWords, heightWords, powerAdvice, stopsWords } from '../../words/light-words.ts';
import { behindWords, powersWords, seenShortly } from '../../words/report-words.ts';
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

/** Level of the subject with its spread, once the room has been asked; until then the light that comes straight. */
function subjectLevel(state: LeadState, sheet: LightSheet): string {
  const total = state.light.lit.value?.report.subject.total ?? null;
  return total ? `subject ${spreadWords(total)}` : `subject ${stopsWords(sheet.totalStops)}`;
}

/** What is behind the subject, or how far the room is that it follows from. */
function behindLine(state: LeadState): string {
  const report = state.light.lit.value?.report;
  if (report) return behindWords(report);
  const readiness = state.light.readiness.value;
  return readiness.kind === 'working' ? `room: ${Math.round(readiness.part * 100)} %` : 'room …';
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
  const report = state.light.lit.value?.report ?? null;
  const seen = report?.units.find(({ id }) => id === stand.id);
  const trouble = state.light.trouble.value;
  return (
    <button type="button" class="light-strip" onClick={open} aria-label={`Light sheet of ${letter}`}>
      {sheet.kind === 'cannot' || trouble ? (
        <>
          <b class="power">{letter}</b>
          <span class="trouble reason">{sheet.kind === 'cannot' ? sheet.reason : trouble}</span>
        </>
      ) : (
        <>
          <span class="power">
            <b>{`${letter} ${powerLabel(mark.powerStops)}`}</b>
            <small>{` ${subjectLevel(state, sheet)}`}</small>
          </span>
          <span>{report ? `Wanted: ${powersWords(report)}` : powerAdvice(sheet)}</span>
          <span>{`${angleWords(sheet)}; ${heightWords(sheet, units)}`}</span>
          <span>
            {`${behindLine(state)}; `}
            <i class={sheet.inFrame.part === 'none' ? 'quiet' : 'trouble'}>
              {seen ? seenShortly(seen) : frameWords(sheet, letter)}
            </i>
          </span>
        </>
      )}
      <WorstCaution state={state} />
    </button>
  );
}
