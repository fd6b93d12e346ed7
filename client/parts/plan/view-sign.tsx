import type { Entry } from '../../../shared/document/schema.ts';
import { type PlanView, toScreen } from './plan-view.ts';

const WEDGE_M = 30;

/** The camera with what its lens takes in, and the subject as two rings of chalk. */
export function ViewSign(props: { seen: Entry<'moment/view'>; horizontalDeg: number; view: PlanView }) {
  const { seen, horizontalDeg, view } = props;
  const { camera, subject } = seen;
  const axis = Math.atan2(subject.spot.y - camera.spot.y, subject.spot.x - camera.spot.x);
  const at = toScreen(view, camera.spot);
  const edge = (side: number) => {
    const angle = axis + (side * horizontalDeg * Math.PI) / 360;
    const far = {
      x: camera.spot.x + WEDGE_M * Math.cos(angle),
      y: camera.spot.y + WEDGE_M * Math.sin(angle),
    };
    return toScreen(view, far);
  };
  const [left, right] = [edge(-1), edge(1)];
  const couple = toScreen(view, subject.spot);
  return (
    <g class="view-sign">
      <path class="wedge" d={`M${left.x} ${left.y}L${at.x} ${at.y}L${right.x} ${right.y}`} />
      <g class="subject" transform={`translate(${couple.x} ${couple.y})`}>
        <circle cx="-4" r="7" />
        <circle cx="4" r="7" />
      </g>
      <g class="camera" transform={`translate(${at.x} ${at.y})`}>
        <path d="M-11-8h22l-4 16h-14z" />
        <text dy="0.32em">C</text>
      </g>
    </g>
  );
}
