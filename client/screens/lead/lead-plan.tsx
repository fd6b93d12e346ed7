import { useComputed } from '@preact/signals';
import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import { fieldOfView } from '../../../core/light/field-of-view.ts';
import { latestCarry } from '../../../shared/document/ask.ts';
import { type Carry, isOpen } from '../../../shared/document/carry.ts';
import type { Stand } from '../../../shared/document/parts.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { LightMap } from '../../parts/light-map/index.tsx';
import { Loupe } from '../../parts/plan/loupe.tsx';
import { Plan } from '../../parts/plan/plan.tsx';
import { fitView, type PlanView, toScreen } from '../../parts/plan/plan-view.ts';
import { StandSign } from '../../parts/plan/stand-sign.tsx';
import { type TapeLook, TapeMark } from '../../parts/plan/tape-mark.tsx';
import { useSize } from '../../parts/plan/use-size.ts';
import { ViewSign } from '../../parts/plan/view-sign.tsx';
import { elsewhereOf } from '../../state/elsewhere.ts';
import type { Draft } from './draft.ts';
import { FrameInset } from './frame-inset.tsx';
import type { LeadState } from './lead-state.ts';
import { usePlanTouch } from './use-plan-touch.ts';
import { ViewKeys } from './view-keys.tsx';

const LOOKS: Partial<Record<Carry['state'], TapeLook>> = {
  called: 'called',
  held: 'called',
  delivered: 'called',
  seen: 'seen',
  carrying: 'carrying',
  cant: 'trouble',
};

/** The mark of an open carry as the other phone echoed it, or, before it has, as it was called. */
function CarryMark({ carry, stand, view }: { carry: Carry; stand: Stand; view: PlanView }) {
  const look = LOOKS[carry.state];
  if (!look) return null;
  const echoed = carry.current.stamps.seen?.echo;
  const at = toScreen(view, (echoed ?? carry.current.mark).spot);
  const from = toScreen(view, stand.place.mark.spot);
  return (
    <g data-echoed={echoed ? 'yes' : 'no'} data-carry={carry.state}>
      <path class="leader" d={`M${from.x} ${from.y}L${at.x} ${at.y}`} />
      <TapeMark at={at} letter={stand.kit.letter} job={stand.kit.job} look={look} />
    </g>
  );
}

/** A stand that was set elsewhere: the mark it was called to in broken tape, the real one filled. */
function ElsewhereMarks({
  night,
  carry,
  stand,
  view,
}: {
  night: Night;
  carry: Carry;
  stand: Stand;
  view: PlanView;
}) {
  const elsewhere = elsewhereOf(night, carry);
  if (!elsewhere) return null;
  const { letter, job } = stand.kit;
  const called = toScreen(view, elsewhere.called.spot);
  const real = toScreen(view, elsewhere.real.spot);
  return (
    <g data-elsewhere={letter}>
      <path class="leader" d={`M${called.x} ${called.y}L${real.x} ${real.y}`} />
      <TapeMark at={called} letter={letter} job={job} look="draft" />
      <TapeMark at={real} letter="" job={job} look="set" />
    </g>
  );
}

function Stands({ night, view }: { night: Night; view: PlanView }) {
  return (
    <>
      {night.stands.map((stand) => {
        const { mark } = stand.place;
        const carry = latestCarry(night, stand.id);
        return (
          <g key={stand.id}>
            {carry && isOpen(carry) && <CarryMark carry={carry} stand={stand} view={view} />}
            {carry && <ElsewhereMarks night={night} carry={carry} stand={stand} view={view} />}
            <StandSign
              at={toScreen(view, mark.spot)}
              letter={stand.kit.letter}
              job={stand.kit.job}
              faceDeg={mark.facingDeg - view.upDeg}
            />
          </g>
        );
      })}
    </>
  );
}

/** Where stands, camera and subject are drawn, px. */
function signSpots(night: Night, view: PlanView): Spot[] {
  const seen = night.moment?.view;
  const spots = night.stands.map((stand) => stand.place.mark.spot);
  return [...spots, ...(seen ? [seen.camera.spot, seen.subject.spot] : [])].map((spot) =>
    toScreen(view, spot),
  );
}

function DraftMark({ draft, stand, view }: { draft: Draft; stand: Stand; view: PlanView }) {
  const at = toScreen(view, draft.mark.spot);
  return (
    <g data-draft={stand.kit.letter}>
      <TapeMark at={at} letter={stand.kit.letter} job={stand.kit.job} look="draft" />
    </g>
  );
}

const MOVE: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** The lead's plan: press, drag, lift; or arrows on the keyboard. Lifting leaves a draft and sends nothing. */
export function LeadPlan({ state }: { state: LeadState }) {
  const night = state.session.night.value;
  const { element, size } = useSize<HTMLDivElement>();
  const [ownView, setView] = useState<PlanView | null>(null);
  const before = useRef<Draft | null>(null);
  const { held } = state;
  const stand = useComputed(() => state.stand.value).value;
  const draft = state.draft.value;
  const outline = night?.room?.outline;
  const view = useMemo(
    () => (outline && size ? (ownView ?? fitView(outline, size, 0)) : null),
    [outline, size, ownView],
  );
  const signs = useMemo(() => (night && view ? signSpots(night, view) : []), [night, view]);
  const touch = usePlanTouch(view, {
    onPoint: state.place,
    onHold: (down) => {
      if (down && !held.peek()) before.current = state.draft.peek();
      held.value = down;
    },
    onAbort: () => {
      state.draft.value = before.current;
    },
    onView: setView,
  });
  useEffect(() => setView(null), [size?.widthPx, size?.heightPx]);
  const onKeyDown = (event: KeyboardEvent) => {
    const [x, y] = MOVE[event.key] ?? [0, 0];
    const mark = state.mark.peek();
    if (event.key === 'Enter' && state.draft.peek()) state.call();
    else if (event.key === 'Escape') state.dropDraft();
    else if ((x !== 0 || y !== 0) && mark) {
      const byM = event.shiftKey ? 1 : 0.1;
      state.place({ x: mark.spot.x + x * byM, y: mark.spot.y + y * byM });
    } else return;
    event.preventDefault();
  };
  // A press, or Enter before anything was moved, takes the mark up where it is.
  const begin = () => {
    const mark = state.mark.peek();
    if (mark && !state.draft.peek()) state.place(mark.spot);
  };
  const seen = night?.moment?.view;
  const lit = state.light.lit.value;
  return (
    <section class="lead-plan" ref={element} aria-label="Plan">
      {night && view && (
        <>
          <Plan
            night={night}
            view={view}
            drawing="lead-room"
            signs={signs}
            said={`Plan of the room with ${night.stands.length} stands. The list holds the same.`}
            on={touch}
            over={
              held.value &&
              draft &&
              stand && (
                <Loupe spot={draft.mark.spot} view={view} drawing="lead-room" letter={stand.kit.letter} />
              )
            }
          >
            {outline && lit && (held.value || state.mapPinned.value) && (
              <LightMap lines={lit.lines} outline={outline} view={view} signs={signs} />
            )}
            {seen && (
              <ViewSign seen={seen} horizontalDeg={fieldOfView(seen.frame).horizontalDeg} view={view} />
            )}
            <Stands night={night} view={view} />
            {draft && stand && <DraftMark draft={draft} stand={stand} view={view} />}
          </Plan>
          {lit && (
            <FrameInset report={lit.report} away={draft && toScreen(view, draft.mark.spot)} view={view} />
          )}
          <ViewKeys state={state} night={night} view={view} set={setView} />
          <button
            type="button"
            class="arrow-key"
            aria-label="Move the mark with the arrow keys; Enter calls, Escape drops"
            onKeyDown={onKeyDown}
            onClick={begin}
          >
            ✛
          </button>
        </>
      )}
    </section>
  );
}
