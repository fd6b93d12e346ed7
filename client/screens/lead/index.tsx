import { useMemo } from 'preact/hooks';
import { isOpen } from '../../../shared/document/carry.ts';
import { LinkLine } from '../../parts/link-line/index.tsx';
import type { NightSession } from '../../session/night-session.ts';
import { InvitePanel } from './invite-panel.tsx';
import { LeadPlan } from './lead-plan.tsx';
import { createLeadState, type LeadState } from './lead-state.ts';
import { LightPanel } from './light-panel.tsx';
import { LightStrip } from './light-strip.tsx';
import { ListPanel } from './list-panel.tsx';
import { MorePanel } from './more-panel.tsx';
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

function CallKey({ state }: { state: LeadState }) {
  const letter = state.stand.value?.kit.letter ?? '';
  const ready = state.draft.value !== null;
  return (
    <button type="button" class="main-key call-key" disabled={!ready} onClick={state.call}>
      {ready ? `Call ${letter} here` : `Press the floor where ${letter} belongs`}
    </button>
  );
}

const PANELS = {
  none: () => null,
  light: LightPanel,
  nudge: NudgePanel,
  list: ListPanel,
  more: MorePanel,
  invite: InvitePanel,
} as const;

/** The lead's face: the plan, the chosen stand's numbers, how far its call got, and one key that sends it. */
export function LeadFace({ session }: { session: NightSession }) {
  const state = useMemo(() => createLeadState(session), [session]);
  const night = session.night.value;
  const Panel = PANELS[state.panel.value];
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
        <LightStrip state={state} />
        <StandKeys state={state} />
        <CarryKeys state={state} />
        <CallKey state={state} />
      </div>
      <Panel state={state} />
    </main>
  );
}
