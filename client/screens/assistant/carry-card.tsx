import { useEffect } from 'preact/hooks';
import { toldRevisions } from '../../../shared/document/carry.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { asId, type PersonId } from '../../../shared/ids.ts';
import { hush, say, speechVoice, speechWanted } from '../../device/speech.ts';
import { everySecond } from '../../device/ticking.ts';
import { forgetTurn, turnFelt, turnSense, turnWanted } from '../../device/turn-sense.ts';
import { BigArrow } from '../../parts/direction/index.tsx';
import { later } from '../../parts/later/index.tsx';
import { SheetPanel } from '../../parts/sheet-panel/index.tsx';
import { rememberedStep } from '../../session/own-step.ts';
import { CANT_REASONS } from '../../words/carry-words.ts';
import { markFacts } from '../../words/mark-words.ts';
import { spokenCard } from '../../words/spoken-words.ts';
import type { Asked, AssistantState } from './assistant-state.ts';
import { CardKeys } from './card-keys.tsx';
import { CarryPlan } from './carry-plan.tsx';
import { FacingKeys } from './facing-keys.tsx';
import { useSeen } from './use-seen.ts';
import { nudgedOnly, type Way, wayOf } from './way.ts';

const JOB = { key: 'key', back: 'back light' } as const;
const ElsewherePanel = later(async () => (await import('./elsewhere-panel.tsx')).ElsewherePanel);

/** How the stand is to be; for a nudge of a stand that stands only what changes. */
function Facts({ night, asked }: { night: Night; asked: Asked }) {
  const holds = asked.stand.kit.umbrellaGear ? 'Umbrella' : 'Head';
  const facts = markFacts(night, asked.stand.place.mark, asked.carry.current.mark, holds);
  const shown = nudgedOnly(asked) ? facts.filter(({ change }) => change) : facts;
  return (
    <dl class="mark-facts">
      {shown.map((fact) => (
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

function CantPanel({ state, asked }: { state: AssistantState; asked: Asked }) {
  const close = () => {
    state.panel.value = 'none';
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

/** How far the phone was turned since its person said what they face; null when that is not felt, or trusted no more. */
function useTurn(cardId: string): number | null {
  useEffect(() => forgetTurn, [cardId]);
  const felt = turnFelt.value;
  const isOver = felt !== null && everySecond.value > felt.untilMs;
  useEffect(() => {
    if (isOver) forgetTurn();
  }, [isOver]);
  return felt && !isOver && turnSense.value === 'ready' ? felt.turnedDeg : null;
}

function SayAgain({ text }: { text: string }) {
  if (!speechWanted.value || speechVoice.value !== 'ready') return null;
  return (
    <button type="button" class="say-key" onClick={() => say(text)}>
      Say it again
    </button>
  );
}

/** Which stand, and how the call stands. */
function Heading({ asked }: { asked: Asked }) {
  const { kit } = asked.stand;
  const { state, current } = asked.carry;
  const times = toldRevisions(asked.carry).length - 1;
  return (
    <h2>
      <span class="letter">{kit.letter}</span>
      {` ${JOB[kit.job]}${state === 'carrying' ? ', carrying' : state === 'cant' ? ', told: can’t' : ''}`}
      {(times > 0 || current.why === 'nudge') && (
        <span class="changed">{times > 1 ? ` changed ${times} times` : ' changed'}</span>
      )}
    </h2>
  );
}

function ArrowAndDistance({ way, facing, isFelt }: { way: Way; facing: string; isFelt: boolean }) {
  const look = way.kind === 'none' ? 'straight' : isFelt ? 'felt' : 'sure';
  const bends = way.legs.length > 2;
  return (
    <div class="arrow-and-distance">
      <BigArrow turnDeg={way.turnDeg} said={`Arrow, facing ${facing}`} look={look} />
      <p class="distance">
        <b>{way.distance.main}</b>
        {way.distance.steps && <span>{way.distance.steps}</span>}
        {bends && <span class="quiet">to the bend</span>}
        {way.kind === 'none' && <span class="quiet">straight line</span>}
        {way.whole && <span class="whole-way">{way.whole}</span>}
      </p>
    </div>
  );
}

/** The carry card: which stand, which way, what to steer by, how far, and the key to press. */
export function CarryCard({ state, night, asked }: { state: AssistantState; night: Night; asked: Asked }) {
  useSeen(state, asked);
  const { current } = asked.carry;
  const turned = useTurn(current.id);
  const stepM = night.people.get(asId<PersonId>(state.session.hand.person))?.stepM ?? rememberedStep();
  const way = wayOf(night, asked, { facingId: state.facingId.value, stepM, turnedDeg: turned ?? 0 });
  const facing = way.facing?.label ?? 'the plan as drawn';
  const spoken = spokenCard(asked.stand.kit.letter, way);
  // With much to say there is less room for the numbers that are needed at the mark only.
  const isTight = way.legs.length > 2 || way.kind === 'none' || way.lines.length > 1 || turnWanted.value;
  useEffect(() => {
    say(spoken);
    return hush;
  }, [current.id]);
  return (
    // A touch anywhere on the card shows that its person has heard the ring.
    <article
      class={`carry-card tape-${asked.stand.kit.job} way-${way.kind}${isTight ? ' is-tight' : ''}`}
      data-carry={asked.carry.id}
      data-revision={current.number}
      onPointerDown={state.heard}
    >
      <div class="card-body">
        <div class="card-says">
          <div class="card-way">
            <Heading asked={asked} />
            <ArrowAndDistance way={way} facing={facing} isFelt={turned !== null} />
          </div>
          <p class="sentence" role="alert">
            {way.lines.map((line) => (
              <span key={line}>{line}</span>
            ))}
          </p>
          <SayAgain text={spoken} />
          <FacingKeys state={state} way={way} />
        </div>
        <div class="card-shows">
          <Facts night={night} asked={asked} />
          <CarryPlan night={night} asked={asked} way={way} facing={facing} />
        </div>
      </div>
      <CardKeys state={state} asked={asked} />
      {state.panel.value === 'cant' && <CantPanel state={state} asked={asked} />}
      {state.panel.value === 'elsewhere' && (
        <ElsewherePanel state={state} night={night} asked={asked} way={way} stepM={stepM} />
      )}
    </article>
  );
}
