import { useSignal } from '@preact/signals';
import { removeMoment } from '../../../shared/document/commands/leave-out-moment.ts';
import { addMoments } from '../../../shared/document/commands/running-order.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { momentsFromPreset } from '../../../shared/timeline/moments-from-preset.ts';
import { EVENING_PRESETS } from '../../../shared/timeline/presets.ts';
import { readTimeline } from '../../../shared/timeline/read-timeline.ts';
import type { TimelineMoment, TimelineReading } from '../../../shared/timeline/timeline.ts';
import { FileKey } from '../../parts/file-key/index.tsx';
import type { LeadState } from './lead-state.ts';
import { sayDone } from './say-done.ts';

/** Seven in the evening, minutes after midnight: presets begin then, and times can be changed afterwards. */
const PRESET_STARTS_MIN = 19 * 60;

type Found = readonly Pick<TimelineMoment, 'name' | 'startsAt'>[];

const LEAVE_OUT = 'leave it out';

/** What the text leaves open, each question with its answers; one answer often settles its neighbours too. */
function Asked({
  reading,
  answer,
}: {
  reading: TimelineReading;
  answer: (lines: readonly number[], label: string) => void;
}) {
  return (
    <>
      {reading.asks.map(({ line, text, question, choices }) => (
        <fieldset key={line} class="choice">
          <legend>{`“${text}”: ${question}`}</legend>
          {choices.map(({ label }) => (
            <button key={label} type="button" onClick={() => answer([line], label)}>
              {label}
            </button>
          ))}
        </fieldset>
      ))}
      {reading.asks.length > 2 && (
        <button
          type="button"
          onClick={() =>
            answer(
              reading.asks.map(({ line }) => line),
              LEAVE_OUT,
            )
          }
        >
          {`Leave all ${reading.asks.length} out`}
        </button>
      )}
    </>
  );
}

/** A timeline from the couple's own text, a calendar file, or a usual evening. */
export function PasteTimeline({ state, night }: { state: LeadState; night: Night }) {
  const { doc, hand } = state.session;
  const text = useSignal('');
  const answers = useSignal<ReadonlyMap<number, string>>(new Map());
  const said = useSignal('');
  const reading =
    text.value.trim() === ''
      ? null
      : readTimeline(text.value, { date: night.about?.date ?? '', answers: answers.value });
  const take = (found: Found) => {
    const list = found.map(({ name, startsAt }) => ({ name: name.slice(0, 80), expected: startsAt }));
    const outcome = addMoments(doc, hand, list);
    sayDone(state, outcome, `${list.length} moments added at the end.`, () => {
      if (!outcome.ok) return outcome;
      for (const id of outcome.momentIds) removeMoment(doc, hand, id);
      return { ok: true };
    });
    if (outcome.ok) text.value = '';
  };
  const open = reading?.asks.length ?? 0;
  const found: Found = reading?.moments ?? [];
  const fromCalendar = async (file: File) => {
    const { readCalendar } = await import('../../import/calendar.ts');
    const read = readCalendar(await file.text(), {
      date: night.about?.date ?? '',
      phoneZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    });
    said.value = [
      read.trouble,
      ...read.notes,
      ...read.leftOut.map(({ name, why }) => `Left out: ${name}, ${why}.`),
    ]
      .filter((line) => line !== null)
      .join(' ');
    if (read.moments.length > 0) take(read.moments);
  };
  return (
    <details class="paste-timeline">
      <summary>Add moments from a text, a calendar or a usual evening</summary>
      <label>
        The timeline as you were sent it
        <textarea
          rows={6}
          value={text.value}
          onInput={(event) => {
            text.value = event.currentTarget.value;
            answers.value = new Map();
          }}
        />
      </label>
      {reading?.trouble && <p role="alert">{reading.trouble}</p>}
      {reading && (
        <>
          <ul class="plain-list" aria-label="Read from the text">
            {reading.moments.map(({ line, name, startsAt, why }) => (
              <li key={`${line}:${name}`}>{`${startsAt ?? 'open'} ${name}${why ? ` (${why})` : ''}`}</li>
            ))}
          </ul>
          <Asked
            reading={reading}
            answer={(lines, label) => {
              const next = new Map(answers.value);
              for (const line of lines) next.set(line, label);
              answers.value = next;
            }}
          />
          {reading.leftOut.map(({ line, text: left, why }) => (
            <p key={line} class="quiet">{`Left out: “${left}”, ${why}.`}</p>
          ))}
          <button
            type="button"
            class="main-key"
            disabled={open > 0 || found.length === 0}
            onClick={() => take(found)}
          >
            {open > 0 ? `${open} to answer first` : `Add ${found.length}`}
          </button>
        </>
      )}
      <FileKey
        word="From a calendar file"
        accept=".ics,text/calendar"
        take={(file) => void fromCalendar(file)}
      />
      {said.value && <p role="status">{said.value}</p>}
      <h3>A usual evening, from seven on</h3>
      {EVENING_PRESETS.map((preset) => (
        <button
          key={preset.id}
          type="button"
          onClick={() => take(momentsFromPreset(preset, PRESET_STARTS_MIN))}
        >
          {`${preset.title}: ${preset.moments.length} moments`}
        </button>
      ))}
    </details>
  );
}
