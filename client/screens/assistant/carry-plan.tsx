import { useMemo } from 'preact/hooks';
import type { Spot } from '../../../core/geometry/spot.ts';
import type { Night } from '../../../shared/document/snapshot.ts';
import { WayLine } from '../../parts/direction/way-line.tsx';
import { Plan } from '../../parts/plan/plan.tsx';
import { fitView, toScreen } from '../../parts/plan/plan-view.ts';
import { StandSign } from '../../parts/plan/stand-sign.tsx';
import { TapeMark } from '../../parts/plan/tape-mark.tsx';
import { useSize } from '../../parts/plan/use-size.ts';
import type { Asked } from './assistant-state.ts';
import type { Way } from './way.ts';

const NONE: readonly Spot[] = [];

/** Where a stand was set is looked at from near: so much around its mark, m. */
const NEAR_M = 1.3;

const nearby = ({ x, y }: Spot): Spot[] => [
  { x: x - NEAR_M, y: y - NEAR_M },
  { x: x + NEAR_M, y: y + NEAR_M },
];

/** The plan turned so that what the assistant faces is up, with the stand, its way, its mark, and where it really stands. */
export function CarryPlan(props: {
  night: Night;
  asked: Asked;
  way: Way;
  facing: string;
  /** Where the stand was set, if not on its mark. */
  real?: Spot | null;
}) {
  const { night, asked, way, facing, real = null } = props;
  const { element, size } = useSize<HTMLDivElement>();
  const { kit, place } = asked.stand;
  const mark = asked.carry.current.mark;
  const subject = night.moment?.view.subject.spot;
  const legs = real ? NONE : way.legs;
  const around = real
    ? [...nearby(mark.spot), real]
    : [place.mark.spot, mark.spot, ...legs, ...(subject ? [subject] : [])];
  const { headingDeg } = way;
  const view = useMemo(
    () => size && fitView(around, size, headingDeg, real ? 6 : 44),
    [size, headingDeg, place.mark.spot, mark.spot, subject, real, way.distanceM],
  );
  const signs = useMemo(() => (view ? around.map((spot) => toScreen(view, spot)) : []), [view]);
  const from = view && toScreen(view, place.mark.spot);
  const to = view && toScreen(view, mark.spot);
  const couple = view && subject && toScreen(view, subject);
  const nearest = view && way.nearest ? toScreen(view, way.nearest) : null;
  return (
    <div class="carry-plan" ref={element}>
      {view && from && to && (
        <Plan
          night={night}
          view={view}
          drawing="carry-room"
          signs={signs}
          said={`Plan, ${facing} at the top`}
        >
          {!real && legs.length > 1 && (
            <WayLine
              legs={legs.map((spot) => toScreen(view, spot))}
              isNone={way.kind === 'none'}
              nearest={nearest}
            />
          )}
          {couple && (
            <g class="view-sign">
              <g class="subject" transform={`translate(${couple.x} ${couple.y})`}>
                <circle cx="-4" r="7" />
                <circle cx="4" r="7" />
              </g>
            </g>
          )}
          <StandSign
            at={from}
            letter={kit.letter}
            job={kit.job}
            faceDeg={place.mark.facingDeg - view.upDeg}
          />
          <TapeMark at={to} letter={kit.letter} job={kit.job} look={real ? 'draft' : 'called'} />
          {real && <TapeMark at={toScreen(view, real)} letter={kit.letter} job={kit.job} look="set" />}
        </Plan>
      )}
    </div>
  );
}
