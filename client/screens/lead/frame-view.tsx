import type { LightReport } from '../../../core/light/report/light-report.ts';
import { FramePicture } from '../../parts/frame-picture/index.tsx';
import { pictureWords } from '../../words/report-words.ts';

type Points = readonly { readonly asideFraction: number; readonly downFraction: number }[];

const outline = (points: Points): string =>
  `M${points.map((point) => `${(point.asideFraction * 300).toFixed(1)} ${(point.downFraction * 200).toFixed(1)}`).join('L')}Z`;

/** The side of the head that a light reaches, as the arc that is drawn heavy: angles from straight up, degrees. */
const ARCS = { 'camera-left': [200, 340], 'camera-right': [20, 160], 'on-axis': [-70, 70] } as const;

/** Part of the head's outline between two angles clockwise from the top. */
function arcOf(head: Points, side: keyof typeof ARCS): string {
  const xs = head.map(({ asideFraction }) => asideFraction * 300);
  const ys = head.map(({ downFraction }) => downFraction * 200);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
  const [from, to] = ARCS[side];
  const points = Array.from({ length: 13 }, (_, index) => {
    const turn = ((from + ((to - from) * index) / 12) * Math.PI) / 180;
    const x = (left + right) / 2 + ((right - left) / 2) * Math.sin(turn);
    const y = (top + bottom) / 2 - ((bottom - top) / 2) * Math.cos(turn);
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  });
  return `M${points.join('L')}`;
}

/** The frame check as a picture: the shaded room, the subject, its key side and its rim. */
export function FrameView({ report }: { report: LightReport }) {
  const { frame } = report;
  const head = frame.silhouette?.head ?? [];
  return (
    <FramePicture picture={frame} said={pictureWords(report)}>
      {frame.silhouette && (
        <svg viewBox="0 0 300 200" preserveAspectRatio="none">
          <title>Subject in the frame</title>
          <path class="subject-outline" d={outline(frame.silhouette.body)} />
          <path class="subject-outline" d={outline(head)} />
          {frame.lit.map(({ standId, from, side }) => (
            <path key={standId} class={`lit-edge is-${from}`} d={arcOf(head, side)} />
          ))}
        </svg>
      )}
    </FramePicture>
  );
}
