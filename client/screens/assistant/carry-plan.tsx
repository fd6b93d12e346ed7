import { useMemo } from 'preact/hooks';
import type { Night } from '../../../shared/document/snapshot.ts';
import { Plan } from '../../parts/plan/plan.tsx';
import { fitView, toScreen } from '../../parts/plan/plan-view.ts';
import { StandSign } from '../../parts/plan/stand-sign.tsx';
import { TapeMark } from '../../parts/plan/tape-mark.tsx';
import { useSize } from '../../parts/plan/use-size.ts';
import type { Asked } from './assistant-state.ts';

/** The plan turned so that what the assistant faces is up, with the stand, its way and its mark. */
export function CarryPlan(props: { night: Night; asked: Asked; headingDeg: number; facing: string }) {
  const { night, asked, headingDeg, facing } = props;
  const { element, size } = useSize<HTMLDivElement>();
  const { kit, place } = asked.stand;
  const mark = asked.carry.current.mark;
  const subject = night.moment?.view.subject.spot;
  const around = [place.mark.spot, mark.spot, ...(subject ? [subject] : [])];
  const view = useMemo(
    () => size && fitView(around, size, headingDeg, 44),
    [size, headingDeg, place.mark.spot, mark.spot, subject],
  );
  const signs = useMemo(() => (view ? around.map((spot) => toScreen(view, spot)) : []), [view]);
  const from = view && toScreen(view, place.mark.spot);
  const to = view && toScreen(view, mark.spot);
  const couple = view && subject && toScreen(view, subject);
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
          <path class="leader" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
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
          <TapeMark at={to} letter={kit.letter} job={kit.job} look="called" />
        </Plan>
      )}
    </div>
  );
}
