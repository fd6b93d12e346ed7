import type { Advice } from '../../core/light/powers/advice.ts';
import type { LightReport } from '../../core/light/report/light-report.ts';
import { lengthLabel } from '../../core/units/length.ts';
import { powerLabel } from '../../core/units/power.ts';
import type { Units } from '../../shared/document/schema.ts';
import { stopsWords } from './light-words.ts';

const percent = (fraction: number): string => `${Math.round(fraction * 100)} %`;

/** "behind −2.1, 34 % black": what the picture is like behind the subject. */
export function behindWords({ frame }: LightReport): string {
  const level = frame.background ? stopsWords(frame.background.stops) : 'nothing';
  return `behind ${level}, ${percent(frame.darkFraction)} black`;
}

/** The solved powers of all lights: "K 1/64, B 1/16". */
export function powersWords({ powers, units }: LightReport): string {
  return powers.lights
    .map(({ id, powerStops }) => {
      const letter = units.find((unit) => unit.id === id)?.letter ?? '?';
      return `${letter} ${powerStops === null ? 'off' : powerLabel(powerStops)}`;
    })
    .join(', ');
}

const HINDERED: Record<string, string> = {
  'too-weak': 'the heads are too weak for it',
  'too-strong': 'even their least power is too much',
  'bright-without-flash': 'the room’s own light is above it',
  'lights-disagree': 'it cannot be had together with the rest',
};

/** What cannot be met of what the lead wants, one line each. */
export function missedWords({ powers }: LightReport): string[] {
  return powers.targets.flatMap(({ name, missStops, hindrance, wantedStops }) => {
    if (!hindrance) return [];
    const by = missStops === null ? '' : ` by ${stopsWords(missStops)}`;
    return [`${name} misses ${stopsWords(wantedStops)}${by}: ${HINDERED[hindrance] ?? hindrance}`];
  });
}

/** One piece of advice with its numbers. */
export function adviceWords(advice: Advice, report: LightReport, units: Units): string {
  const letterOf = (id: string) => report.units.find((unit) => unit.id === id)?.letter ?? '?';
  const letter = letterOf(advice.lightId);
  switch (advice.kind) {
    case 'set-power':
      return `${letter}: ${powerLabel(advice.powerStops)}${
        advice.fromStops === null ? '' : ` (is ${powerLabel(advice.fromStops)})`
      }`;
    case 'raise-iso':
      return (
        `${advice.because === 'too-weak' ? `${letter} is too weak` : `${letter} would need more than 1/16`}: ` +
        `ISO ${advice.iso.label} gives ${powersWords({ ...report, powers: advice.after })}`
      );
    case 'close-aperture':
      return `${letter} is too strong at its least: f/${advice.aperture.label.replace('f/', '')} gives ${powersWords(
        {
          ...report,
          powers: advice.after,
        },
      )}`;
    case 'move-back':
      return `or ${letter} back to ${lengthLabel(advice.distanceM, units)} from the subject`;
    case 'move-nearer':
      return `or ${letter} nearer, to ${lengthLabel(advice.distanceM, units)} from the subject`;
  }
}

/** How the camera sees a light: "B in frame: a small star". */
export function seenWords({ letter, seen }: LightReport['units'][number]): string {
  if (!seen) return `${letter} is on the camera`;
  const margin = Math.round(Math.abs(seen.inFrame.marginDeg));
  switch (seen.judged) {
    case 'outside':
      return seen.inFrame.part === 'leg'
        ? `${letter} in frame: legs`
        : `${letter} out of frame by ${margin}°`;
    case 'hidden':
      return `${letter} hidden by ${seen.hiddenBy ?? 'something'}`;
    case 'dark':
      return `${letter} in frame: turned away`;
    case 'star':
      return `${letter} in frame: a small star`;
    case 'veil':
      return `${letter} in frame: a veil over the picture (${stopsWords(seen.veilStops ?? 0)})`;
  }
}

/** The same for a line that has no room: "K out of frame", "B in frame: star". */
export function seenShortly({ letter, seen }: LightReport['units'][number]): string {
  if (!seen) return `${letter} on the camera`;
  if (seen.judged === 'outside')
    return seen.inFrame.part === 'leg' ? `${letter} in frame: legs` : `${letter} out of frame`;
  return seen.judged === 'hidden' ? `${letter} hidden` : `${letter} in frame: ${seen.judged}`;
}

/** Where the shadow of the subject's head lands. */
export function shadowWords(report: LightReport, units: Units): string {
  const { shadow } = report.subject;
  if (!shadow) return 'no key';
  if (shadow.kind === 'none')
    return {
      'light-below-head': 'goes up: the light is lower than the head',
      'light-on-head': 'none: the light is on the head',
      'head-outside': 'not known',
      'over-the-walls': 'goes over the walls',
    }[shadow.reason];
  const far = lengthLabel(shadow.behindM, units);
  if (shadow.surface.kind === 'floor') return `on the floor, ${far} behind`;
  const on = shadow.surface.kind === 'wall' ? 'on the wall' : 'on a thing';
  return `${on}, ${far} behind, ${lengthLabel(shadow.heightM, units)} up`;
}

/** "3.2 : 1", with the convention said by whoever shows it. */
export const ratioWords = (ratio: number | null): string =>
  ratio === null ? '–' : `${ratio.toFixed(1)} : 1`;

/** What is behind the subject, wanted and unwanted things apart. */
export function featuresBehind(report: LightReport): { wanted: string; unwanted: string; other: string } {
  const behind = report.frame.features.filter(({ behindFraction }) => behindFraction > 0);
  const names = (background: string) =>
    behind
      .filter((feature) => feature.background === background)
      .map(({ name, levelStops }) => `${name} (${stopsWords(levelStops)})`)
      .join(', ');
  return { wanted: names('wanted'), unwanted: names('unwanted'), other: names('neither') };
}

/** The small picture in words, for who cannot see it. */
export function pictureWords(report: LightReport): string {
  const { unwanted } = featuresBehind(report);
  const key = report.frame.lit.find(({ from }) => from === 'front');
  const rim = report.frame.lit.find(({ from }) => from === 'rim');
  return [
    'What the camera sees',
    behindWords(report),
    key ? `lit from ${key.side}` : 'no light from the front',
    rim ? `rim on ${rim.side}` : 'no rim',
    ...(unwanted ? [`not wanted: ${unwanted}`] : []),
  ].join(', ');
}
