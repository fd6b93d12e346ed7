import type { LightSheet } from '../../core/light/light-sheet.ts';
import { lengthLabel } from '../../core/units/length.ts';
import { powerLabel } from '../../core/units/power.ts';
import type { Units } from '../../shared/document/schema.ts';

/** Stops with their sign, to a tenth: "+0.3", "−1.2", "0.0". */
export function stopsWords(stops: number): string {
  const rounded = Math.round(stops * 10) / 10;
  if (rounded === 0) return '0.0';
  return `${rounded > 0 ? '+' : '−'}${Math.abs(rounded).toFixed(1)}`;
}

/** What the trade calls a pattern. */
export const PATTERN: Record<LightSheet['pattern'], string> = {
  flat: 'flat',
  butterfly: 'butterfly',
  loop: 'loop',
  rembrandt: 'Rembrandt',
  split: 'split',
  rim: 'rim',
};

/** "47° camera-right, loop". */
export function angleWords(sheet: LightSheet): string {
  const side = sheet.side === 'on-axis' ? 'on the axis' : sheet.side;
  return `${Math.round(Math.abs(sheet.azimuthDeg))}° ${side}, ${PATTERN[sheet.pattern]}`;
}

/** "32° up, 3 m". */
export function heightWords(sheet: LightSheet, units: Units): string {
  const up = sheet.elevationDeg >= 0 ? 'up' : 'below the eyes';
  return `${Math.round(Math.abs(sheet.elevationDeg))}° ${up}, ${lengthLabel(sheet.distanceM, units)}`;
}

/** What to dial so that the subject comes out right, or what to do when no power can. */
export function powerAdvice(sheet: LightSheet): string {
  const answer = sheet.powerForZero;
  switch (answer.kind) {
    case 'power':
      return `${powerLabel(answer.powerStops)} gives ${stopsWords(answer.resultStops)}`;
    case 'too-weak':
      return `too weak by ${stopsWords(answer.shortByStops).replace('+', '')} at full: go nearer or raise ISO`;
    case 'too-strong':
      return `${stopsWords(answer.overByStops)} even at its least: move back or close down`;
    case 'ambient-alone':
      return `room light alone gives ${stopsWords(answer.ambientStops)}: close down, or no flash`;
  }
}

/** Whether the camera sees the stand. */
export function frameWords(sheet: LightSheet, letter: string): string {
  const margin = Math.round(Math.abs(sheet.inFrame.marginDeg));
  if (sheet.inFrame.part === 'none') return `${letter} out of frame by ${margin}°`;
  const part = { leg: 'legs', head: 'head', umbrella: 'umbrella' }[sheet.inFrame.part];
  return `${letter} in frame: ${part}`;
}
