import { clockWords } from './clock.ts';
import type { EveningPreset, UsualMoment } from './presets.ts';

/** @returns a preset's moments with their times, 'HH:MM', for an evening that begins at `startsMin` after midnight */
export function momentsFromPreset(
  preset: EveningPreset,
  startsMin: number,
): { readonly name: string; readonly startsAt: string; readonly usual: UsualMoment }[] {
  return preset.moments.map(({ name, afterMin, usual }) => ({
    name,
    startsAt: clockWords(startsMin + afterMin),
    usual,
  }));
}
