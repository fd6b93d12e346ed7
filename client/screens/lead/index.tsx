import type { ComponentType } from 'preact';
import { useEffect, useMemo } from 'preact/hooks';
import { isOpen } from '../../../shared/document/carry.ts';
import { everySecond } from '../../device/ticking.ts';
import { Announced } from '../../parts/announced/index.tsx';
import { later } from '../../parts/later/index.tsx';
import { LinkLine } from '../../parts/link-line/index.tsx';
import type { NightSession } from '../../session/night-session.ts';
import { isPartnerLost } from '../../session/phone-link.ts';
import { ElsewhereLine } from './elsewhere-line.tsx';
import { LeadPlan } from './lead-plan.tsx';
import { createLeadState, type LeadState, type Panel } from './lead-state.ts';
import { LightStrip } from './light-strip.tsx';
import { NudgePanel } from './nudge-panel.tsx';
import { StandKeys } from './stand-keys.tsx';
import './panels.css';
import './style.css';

function NoticeLine({ state }: { state: LeadState }) {
  const notice = state.notice.value;
  const carry = state.carry.value;
  const rang = carry && isOpen(carry) ? state.ringReach(carry.id) : null;
  if (!notice && !rang) return null;
  const RANG = {
    taken: 'Ringing …',
    rang: 'Their phone rang.',
    heard: 'Heard.',
    expired: 'Ring not heard.',
  } as const;
  return (
    <div class="notice" role="status">
      <span>{`${notice?.text ?? ''}${rang ? ` ${RANG[rang]}` : ''}`}</span>
      {notice?.undo && (
        <button type="button" onClick={notice.undo}>
          Undo
        </button>
      )}
    </div>
  );
}

/** The keys that act on the chosen stand's open call. */
function CarryKeys({ state }: { state: LeadState }) {
  const carry = state.carry.value;
  const open = carry !== null && isOpen(carry);
  const toPanel = (panel: 'nudge' | 'list' | 'more') => () => {
    state.panel.value = panel;
  };
  return (
    <div class="carry-keys">
      <button type="button" onClick={toPanel('nudge')}>
        Nudge
      </button>
      {state.draft.value ? (
        <button type="button" onClick={state.dropDraft}>
          Drop
        </button>
      ) : (
        <button type="button" disabled={!open} onClick={state.withdraw}>
          Withdraw
        </button>
      )}
      {carry?.state === 'held' ? (
        <button type="button" onClick={state.sendHeld}>
          Send now
        </button>
      ) : (
        <button type="button" disabled={!open} onClick={state.ringAgain}>
          Ring
        </button>
      )}
      <button type="button" onClick={toPanel('list')}>
        List
      </button>
      <button type="button" onClick={toPanel('more')}>
        More
      </button>
    </div>
  );
}

/** The other phone is lost: what can be done all the same. */
function LostKey({ state }: { state: LeadState }) {
  if (!isPartnerLost(state.session, everySecond.value)) return null;
  const open = () => {
    state.panel.value = 'hands';
  };
  return (
    <button type="button" class="lost-key" onClick={open}>
      Phone lost: hand signals
    </button>
  );
}

function CallKey({ state }: { state: LeadState }) {
  const letter = state.stand.value?.kit.letter ?? '';
  const ready = state.draft.value !== null;
  return (
    <button type="button" class="main-key call-key" disabled={!ready} onClick={state.call}>
      {ready ? `Call ${letter} here` : `Press the floor where ${letter} belongs`}
    </button>
  );
}

const PlanEditor = later<{ session: NightSession; done: () => void }>(
  async () => (await import('../plan-editor/index.tsx')).PlanEditor,
);

/** What is opened by a press is fetched by that press; a phone that was there once keeps it. */
const PANELS: Record<Panel, ComponentType<{ state: LeadState }>> = {
  none: () => null,
  nudge: NudgePanel,
  light: later(async () => (await import('./light-panel.tsx')).LightPanel),
  list: later(async () => (await import('./list-panel.tsx')).ListPanel),
  more: later(async () => (await import('./more-panel.tsx')).MorePanel),
  invite: later(async () => (await import('./invite-panel.tsx')).InvitePanel),
  frames: later(async () => (await import('./frames-panel.tsx')).FramesPanel),
  room: later(async () => (await import('./room-panel.tsx')).RoomPanel),
  plan: () => null,
  order: later(async () => (await import('./order-panel.tsx')).OrderPanel),
  hands: later(async () => (await import('./hand-signals-panel.tsx')).HandSignalsPanel),
  gear: later(async () => (await import('./gear-panel.tsx')).GearPanel),
};

/** The lead's face: the plan, the chosen stand's numbers, how far its call got, and one key that sends it. */
export function LeadFace({ session }: { session: NightSession }) {
  const state = useMemo(() => createLeadState(session), [session]);
  useEffect(() => state.close, [state]);
  const night = session.night.value;
  const Panel = PANELS[state.panel.value];
  if (state.panel.value === 'plan')
    return (
      <PlanEditor
        session={session}
        done={() => {
          state.panel.value = 'none';
        }}
      />
    );
  if (!state.standId.value && night?.stands[0]) state.standId.value = night.stands[0].id;
  return (
    <main class="lead-face">
      <header>
        <h1>{night?.moment?.name ?? 'Hushmark'}</h1>
        <LinkLine session={session} />
      </header>
      {night ? (
        <LeadPlan state={state} />
      ) : (
        <p class="waiting" role="status">
          Waiting for the night to arrive from the server …
        </p>
      )}
      <div class="lead-hand">
        <NoticeLine state={state} />
        <ElsewhereLine state={state} />
        <LostKey state={state} />
        <LightStrip state={state} />
        <StandKeys state={state} />
        <CarryKeys state={state} />
        <CallKey state={state} />
      </div>
      <Panel state={state} />
      <Announced session={session} />
    </main>
  );
}
