import type { Night } from '../../../shared/document/snapshot.ts';
import { asId, type PersonId } from '../../../shared/ids.ts';
import { BigArrow } from '../../parts/direction/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { rememberedStep } from '../../session/own-step.ts';
import { CANT_REASONS } from '../../words/carry-words.ts';
import { markFacts } from '../../words/mark-words.ts';
import type { Asked, AssistantState } from './assistant-state.ts';
import { CarryPlan } from './carry-plan.tsx';
import { useSeen } from './use-seen.ts';
import { type Way, wayOf } from './way.ts';

const JOB = { key: 'key', back: 'back light' } as const;

function Facts({ night, asked }: { night: Night; asked: Asked }) {
  const holds = asked.stand.kit.umbrellaGear ? 'Umbrella' : 'Head';
  const facts = markFacts(night, asked.stand.place.mark, asked.carry.current.mark, holds);
  return (
    <dl class="mark-facts">
      {facts.map((fact) => (
        <div key={fact.name} class={fact.change ? 'is-changed' : ''}>
          <dt>{fact.name}</dt>
          <dd>
            {fact.value}
            {fact.change && <em>{fact.change}</em>}
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** "I'm facing …": one press turns arrow and plan. */
function FacingKeys({ state, way }: { state: AssistantState; way: Way }) {
  if (way.facings.length === 0) return null;
  return (
    <fieldset class="facing-keys">
      <legend>I’m facing</legend>
      {way.facings.map((facing) => (
        <button
          key={facing.id}
          type="button"
          aria-pressed={facing.id === way.facing?.id}
          onClick={() => {
            state.facingId.value = facing.id;
          }}
        >
          {facing.label}
        </button>
      ))}
    </fieldset>
  );
}

function CantPanel({ state, asked }: { state: AssistantState; asked: Asked }) {
  const close = () => {
    state.cantOpen.value = false;
  };
  return (
    <SheetPanel title={`Why can’t ${asked.stand.kit.letter} go there?`} close={close}>
      {CANT_REASONS.map((reason) => (
        <button key={reason} type="button" onClick={() => state.cannot(asked, reason)}>
          {reason}
        </button>
      ))}
    </SheetPanel>
  );
}

function CardKeys({ state, asked }: { state: AssistantState; asked: Asked }) {
  const { letter } = asked.stand.kit;
  const carrying = asked.carry.state === 'carrying';
  const told = asked.carry.state === 'cant';
  const cant = () => {
    state.cantOpen.value = true;
  };
  return (
    <div class="card-keys">
      <div class="two-keys">
        <button type="button" disabled={told} onClick={cant}>
          Can’t
        </button>
        {carrying || told ? (
          <button type="button" onClick={() => state.takeBack(asked, carrying ? 'carrying' : 'cant')}>
            Undo
          </button>
        ) : (
          <button type="button" onClick={() => state.set(asked)}>
            {`${letter} is set`}
          </button>
        )}
      </div>
      <button
        type="button"
        class="main-key"
        onClick={() => (carrying ? state.set(asked) : state.carrying(asked))}
      >
        {carrying ? `${letter} is set` : `Carrying ${letter}`}
      </button>
    </div>
  );
}

/** The carry card: which stand, which way, what to steer by, how far, and the key to press. */
export function CarryCard({ state, night, asked }: { state: AssistantState; night: Night; asked: Asked }) {
  useSeen(state, asked);
  const me = night.people.get(asId<PersonId>(state.session.hand.person));
  const way = wayOf(night, asked, state.facingId.value, me?.stepM ?? rememberedStep());
  const { kit } = asked.stand;
  const { state: reached, current } = asked.carry;
  const facing = way.facing?.label ?? 'the plan as drawn';
  return (
    // A touch anywhere on the card shows that its person has heard the ring.
    <article
      class={`carry-card tape-${kit.job}`}
      data-carry={asked.carry.id}
      data-revision={current.number}
      onPointerDown={state.heard}
    >
      <div class="card-body">
        <div class="card-says">
          <h2>
            <span class="letter">{kit.letter}</span>
            {` ${JOB[kit.job]}${reached === 'carrying' ? ', carrying' : reached === 'cant' ? ', told: can’t' : ''}`}
            {current.number > 1 && <span class="changed">{` changed, ${current.number}`}</span>}
          </h2>
          <p class="sentence" role="alert">
            {way.sentence}
          </p>
          <div class="arrow-and-distance">
            <BigArrow turnDeg={way.turnDeg} said={`Arrow, facing ${facing}`} />
            <p class="distance">
              <b>{way.distance.main}</b>
              {way.distance.steps && <span>{way.distance.steps}</span>}
            </p>
          </div>
          <FacingKeys state={state} way={way} />
        </div>
        <div class="card-shows">
          <Facts night={night} asked={asked} />
          <CarryPlan night={night} asked={asked} headingDeg={way.headingDeg} facing={facing} />
        </div>
      </div>
      <CardKeys state={state} asked={asked} />
      {state.cantOpen.value && <CantPanel state={state} asked={asked} />}
    </article>
  );
}
