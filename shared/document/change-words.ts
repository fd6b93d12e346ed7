import { cameraFrame } from '../../core/geometry/camera-frame.ts';
import { subtract } from '../../core/geometry/spot.ts';
import type { Mark } from './schema.ts';
import type { Night } from './snapshot.ts';

const LEAST = 0.005;

const amount = (value: number) => Number(value.toFixed(2));
const signed = (value: number, unit: string) => `${value > 0 ? '+' : ''}${amount(value)} ${unit}`;

/** The shorter way round from one bearing to another, in (-180, 180]. */
const turnFrom = (fromDeg: number, toDeg: number) => 180 - ((((180 - (toDeg - fromDeg)) % 360) + 360) % 360);

function moveWords(night: Night, from: Mark, to: Mark): string[] {
  const way = subtract(to.spot, from.spot);
  const lengthM = Math.hypot(way.x, way.y);
  if (lengthM < LEAST) return [];
  const view = night.moment?.view;
  const frame = view && cameraFrame(view.camera.spot, view.subject.spot);
  // The camera may have been put on the subject since: then it has no left.
  if (!frame) return [`moved ${amount(lengthM)} m`];
  const rightM = way.x * frame.right.x + way.y * frame.right.y;
  const fartherM = way.x * frame.farther.x + way.y * frame.farther.y;
  return [
    ...(Math.abs(rightM) < LEAST
      ? []
      : [`camera-${rightM > 0 ? 'right' : 'left'} ${amount(Math.abs(rightM))} m`]),
    ...(Math.abs(fartherM) < LEAST
      ? []
      : [`${fartherM > 0 ? 'farther' : 'nearer'} ${amount(Math.abs(fartherM))} m`]),
  ];
}

/**
 * What changed between two marks, as the lead pressed it: moves in the sense of the present moment's camera [m], height
 * [m], tilt and turn [°], power [stops]. "as before" where nothing did. At most 120 signs.
 */
export function differenceWords(night: Night, from: Mark, to: Mark): string {
  const parts = moveWords(night, from, to);
  const say = (name: string, value: number, unit: string) => {
    if (Math.abs(value) >= LEAST) parts.push(`${name} ${signed(value, unit)}`);
  };
  say('height', to.heightM - from.heightM, 'm');
  say('tilt', to.tiltDeg - from.tiltDeg, '°');
  say('turn', turnFrom(from.facingDeg, to.facingDeg), '°');
  say('power', to.powerStops - from.powerStops, 'stop');
  return parts.length > 0 ? parts.join(', ') : 'as before';
}
