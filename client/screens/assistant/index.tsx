import { useEffect, useMemo } from 'preact/hooks';
import { powerLabel } from '../../../core/units/power.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { buzz } from '../../device/buzz.ts';
import { keepAwake, waking } from '../../device/wake-lock.ts';
import { AnnounceKeys } from '../../parts/announced/announce-keys.tsx';
import { Announced } from '../../parts/announced/index.tsx';
import { LightLevel } from '../../parts/light-level/index.tsx';
import { LinkLine } from '../../parts/link-line/index.tsx';
import type { NightSession } from '../../session/night-session.ts';
import { headHeight } from '../../words/mark-words.ts';
import { type Asked, type AssistantState, createAssistantState } from './assistant-state.ts';
import { CarryCard } from './carry-card.tsx';
import { ExtrasSetting } from './extras-setting.tsx';
import { StepSetting } from './step-setting.tsx';
import './style.css';
import './card.css';
import './card-sizes.css';

/** A call that was taken back: stays until its person has said so, since a card that vanishes is a riddle. */
function WithdrawnCard({ state, asked }: { state: AssistantState; asked: Asked }) {
  const { letter } = asked.stand.kit;
  return (
    <article class="carry-card is-withdrawn">
      <h2>
        <span class="letter">{letter}</span>
        {' ⊘ withdrawn'}
      </h2>
      <p
        class="sentence"
        role="alert"
      >{`The lead has withdrawn ${letter}. Leave it, or put it back where it stood.`}</p>
      <div class="card-keys">
        <button type="button" class="main-key" onClick={() => state.acknowledge(asked)}>
          Understood
        </button>
      </div>
    </article>
  );
}

/** With nothing to carry: where the stands are, and what comes next. */
function NothingToCarry({ session, night }: { session: NightSession; night: Night }) {
  const { next } = night;
  return (
    <section class="nothing" aria-label="Nothing to carry">
      <h2>Nothing to carry</h2>
      <p class="quiet">A call comes up here by itself. Keep this page open.</p>
      <ul>
        {night.stands.map(({ id, kit, place }) => (
          <li key={id} class={`tape-${kit.job}`}>
            <b class="letter">{kit.letter}</b>
            {` head at ${headHeight(place.mark.heightM, night.units)}, ${powerLabel(place.mark.powerStops)}`}
          </li>
        ))}
      </ul>
      {next && <p>{`Next: ${next.expected ?? ''} ${next.name}`}</p>}
      <AnnounceKeys session={session} night={night} />
      <details>
        <summary>Step, arrow, voice and light of this phone</summary>
        <StepSetting units={night.units} />
        <ExtrasSetting />
        <LightLevel />
      </details>
    </section>
  );
}

/** The lead rings and asks for eyes: fills the screen until it is heard. */
function RingCover({ state }: { state: AssistantState }) {
  if (state.session.signals.ringing.value?.kind !== 'look') return null;
  return (
    <div class="ring-cover" role="alertdialog" aria-label="The lead rings">
      <p>The lead rings: look at your phone.</p>
      <button type="button" class="main-key" onClick={state.heard}>
        Heard
      </button>
    </div>
  );
}

function DoneLine({ state }: { state: AssistantState }) {
  const done = state.done.value;
  // Under a card only a refusal is news: what the card offers to undo, it offers itself.
  if (state.shown.value && done?.undo) return <div class="done-line" role="status" />;
  return (
    <div class="done-line" role="status">
      {done && <span>{done.text}</span>}
      {done?.undo && (
        <button type="button" onClick={done.undo}>
          Undo
        </button>
      )}
    </div>
  );
}

function CallTabs({ state }: { state: AssistantState }) {
  const asked = state.asked.value;
  if (asked.length < 2) return null;
  return (
    <fieldset class="call-tabs">
      <legend class="said-only">Calls that wait</legend>
      {asked.map(({ carry, stand }) => (
        <button
          key={carry.id}
          type="button"
          aria-pressed={carry.id === state.shown.value?.carry.id}
          onClick={() => {
            state.chosenId.value = carry.id;
          }}
        >
          {`${stand.kit.letter} ${carry.state === 'carrying' ? '▲' : '○'}`}
        </button>
      ))}
    </fieldset>
  );
}

/** Buzzes at each new ring, and keeps the screen on while anything is asked. */
function useAttention(state: AssistantState): void {
  const ring = state.session.signals.ringing.value;
  const asked = state.asked.value.length > 0;
  useEffect(() => {
    if (ring) buzz(ring.kind === 'call' || ring.kind === 'look' ? 'newCall' : 'changed');
  }, [ring?.id]);
  useEffect(() => {
    keepAwake(asked);
    return () => keepAwake(false);
  }, [asked]);
}

/** The assistant's face: the carry card while something is asked, else where the stands are. */
export function AssistantFace({ session }: { session: NightSession }) {
  const state = useMemo(() => createAssistantState(session), [session]);
  useAttention(state);
  const night = session.night.value;
  const shown = state.shown.value;
  const ringing = session.signals.ringing.value !== null;
  const sleepy = shown && (waking.value === 'unavailable' || waking.value === 'released');
  return (
    <main class={`assistant-face${ringing ? ' is-ringing' : ''}`}>
      <header>
        <h1>{night?.moment?.name ?? 'Hushmark'}</h1>
        <LinkLine session={session} />
      </header>
      <CallTabs state={state} />
      {!night && (
        <p class="waiting" role="status">
          Waiting for the night to arrive from the server …
        </p>
      )}
      {night && !shown && <NothingToCarry session={session} night={night} />}
      {night &&
        shown &&
        (shown.carry.state === 'withdrawn' ? (
          <WithdrawnCard state={state} asked={shown} />
        ) : (
          <CarryCard state={state} night={night} asked={shown} />
        ))}
      <DoneLine state={state} />
      {sleepy && (
        <p class="sleepy">The screen may go to sleep by itself: set the phone’s own time-out long.</p>
      )}
      <RingCover state={state} />
      <Announced session={session} />
    </main>
  );
}
