import { reflectanceAfter } from '../../core/light/fit/reflectance-after.ts';
import type { LightReport, Spread } from '../../core/light/report/light-report.ts';
import { roundToThird } from '../../core/units/stops.ts';
import type { TestFrame } from '../../shared/document/parts.ts';
import type { Night } from '../../shared/document/snapshot.ts';
import { stopsWords } from './light-words.ts';

const THIRDS = ['', '⅓', '⅔'] as const;

/** Stops as a camera's scale has them: "⅔ over", "1⅓ under", "right". */
export function overWords(stops: number): string {
  const thirds = Math.round(roundToThird(stops) * 3);
  if (thirds === 0) return 'right';
  const size = Math.abs(thirds);
  const whole = Math.floor(size / 3);
  return `${whole > 0 ? whole : ''}${THIRDS[size % 3]} ${thirds > 0 ? 'over' : 'under'}`;
}

/** "+0.1 ±0.4": a level with its spread; a dash where there is no light. */
export const spreadWords = (level: Spread | null): string =>
  level === null ? '–' : `${stopsWords(level.stops)} ±${level.sdStops.toFixed(1)}`;

/** Which lights fired, by their letters: "K", "K and B", "no flash". */
export function firedWords(letters: readonly string[]): string {
  if (letters.length === 0) return 'no flash';
  return letters.length === 1 ? `${letters[0]} alone` : letters.join(' and ');
}

const SOURCE: Record<TestFrame['source'], string> = {
  seen: 'as seen',
  meter: 'by the meter',
  picture: 'read from the picture',
};

/** "K alone, subject ⅔ over, as seen". */
export function takenWords(night: Night, frame: TestFrame): string {
  const letters = frame.lights.map((light) =>
    light.on === 'camera' ? 'C' : (night.stands.find(({ id }) => id === light.standId)?.kit.letter ?? '?'),
  );
  return `${firedWords(letters)}: ${frame.what} ${overWords(frame.stops)}, ${SOURCE[frame.source]}`;
}

/** What an unknown is called: the piece of gear it belongs to, the room, or the light that is there. */
function unknownName(night: Night, id: string): string {
  if (id === 'room') return 'What the room sends back';
  if (id === 'ambient') return 'Light without flash';
  const gear = [...night.gear].find(([gearId]) => id.endsWith(`:${gearId}`));
  return gear?.[1].name ?? id;
}

/** "Head for the key: 0.4 less than listed, ±0.2". */
export function learntWords(night: Night, { id, meanStops, sdStops }: LightReport['learnt'][number]): string {
  const size = Math.abs(meanStops);
  const than = id === 'room' || id === 'ambient' ? 'worked out' : 'listed';
  const walls = reflectanceAfter(night.finishes.walls, meanStops);
  const asIf = id === 'room' ? `; walls as if ${Math.round(walls * 100)} %` : '';
  const value =
    size < 0.05 ? `as ${than}` : `${size.toFixed(1)} ${meanStops > 0 ? 'more' : 'less'} than ${than}`;
  return `${unknownName(night, id)}: ${value}, ±${sdStops.toFixed(1)} stops${asIf}`;
}

/** What to shoot next: "K alone, stand-in where the couple will be: ±0.9 becomes ±0.3". */
export function nextWords(night: Night, next: NonNullable<LightReport['next']>): string {
  const letters = next.unitIds.map((id) => night.stands.find((stand) => stand.id === id)?.kit.letter ?? 'C');
  const subject = night.moment?.view.subject.name.toLowerCase() ?? 'the subject';
  const turned = next.what === 'rim' ? ', turned to the light' : '';
  return (
    `${firedWords(letters)}, a stand-in where ${subject} will be${turned}: ` +
    `±${next.beforeStops.toFixed(1)} becomes ±${next.afterStops.toFixed(1)}`
  );
}
