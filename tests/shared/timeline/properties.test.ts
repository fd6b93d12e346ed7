import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clockWords } from '../../../shared/timeline/clock.ts';
import { momentsFromPreset } from '../../../shared/timeline/moments-from-preset.ts';
import { EVENING_PRESETS } from '../../../shared/timeline/presets.ts';
import { readTimeline } from '../../../shared/timeline/read-timeline.ts';

const DATE = '2027-06-05';
const two = (value: number) => String(value).padStart(2, '0');
const half = (minutes: number) => (minutes % 1440 < 720 ? 'am' : 'pm');
const hour12 = (minutes: number) => ((Math.floor(minutes / 60) + 11) % 12) + 1;
const minute = (minutes: number) => two(minutes % 60);

type Write = (minutes: number) => string;
/** Ways that say which half of the day is meant. */
const CERTAIN: readonly Write[] = [
  (at) => `${hour12(at)}:${minute(at)} ${half(at)}`,
  (at) => `${hour12(at)}:${minute(at)}${half(at).toUpperCase()}`,
  (at) => `${hour12(at)}.${minute(at)} ${half(at)[0]}.m.`,
  (at) => `${hour12(at)}${minute(at)}${half(at)}`,
  (at) => (at % 60 === 0 ? `${hour12(at)} ${half(at)}` : `${hour12(at)}:${minute(at)} ${half(at)}`),
];
/** Ways of the 24-hour clock, for hours that can be no others. */
const ON_24: readonly Write[] = [
  (at) => clockWords(at),
  (at) => `${clockWords(at)} Uhr`,
  (at) => clockWords(at).replace(':', '.'),
  (at) => clockWords(at).replace(':', 'h'),
  (at) => clockWords(at).replace(':', ''),
  (at) => `${clockWords(at)}:00`,
];
/** Ways that leave the half of the day open. */
const OPEN: readonly Write[] = [
  (at) => `${hour12(at)}:${minute(at)}`,
  (at) => `${two(hour12(at))}:${minute(at)}`,
];

const FRAMES: readonly ((time: string, name: string, index: number) => string)[] = [
  (time, name) => `${time} ${name}`,
  (time, name) => `${time} – ${name}`,
  (time, name) => `${time} - ${name}`,
  (time, name) => `${time}: ${name}`,
  (time, name) => `${time}\t${name}`,
  (time, name) => `| ${time} | ${name} |`,
  (time, name) => `• ${time} ${name}`,
  (time, name, index) => `${index + 1}. ${time} ${name}`,
  (time, name, index) => `${index + 1}) ${time}, ${name}`,
];
const AFTER: readonly ((time: string, name: string) => string)[] = [
  (time, name) => `${name} @ ${time}`,
  (time, name) => `${name} (${time})`,
  (time, name) => `${name}\t${time}`,
  (time, name) => `${name} – ${time}`,
];

/** Names of lower-case words that are none of a date, a time or a heading. */
const word = fc.stringMatching(/^[bcdfgkl][aeiou][bdgkl][aeiou][bdgkl]$/);
const names = fc.array(word, { minLength: 1, maxLength: 4 }).map((words) => words.join(' '));
/** Minutes of an evening from half past one in the afternoon, with at most two hours between two moments. */
const evenings = fc
  .tuple(fc.integer({ min: 810, max: 1100 }), fc.array(fc.integer({ min: 1, max: 120 }), { maxLength: 5 }))
  .map(([first, gaps]) =>
    [0, ...gaps].map((_, index) => gaps.slice(0, index).reduce((sum, gap) => sum + gap, first)),
  );

describe('any list, written and read', () => {
  it('times that say what they are come back the same, in the same order, whatever it is', () => {
    const ways = [
      ...CERTAIN.map((write) => [write, false] as const),
      ...ON_24.map((write) => [write, true] as const),
    ];
    const entry = fc.record({
      minutes: fc.nat(1439),
      way: fc.constantFrom(...ways),
      frame: fc.constantFrom(...FRAMES, ...AFTER),
      name: names,
    });
    const lists = fc.array(entry, { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(lists, fc.constantFrom('\n', '\r\n', '\n\n'), (list, end) => {
        const entries = list.map(({ minutes, way: [write, needs24], frame, name }, index) => {
          const at = needs24 && minutes >= 60 && minutes < 780 ? (minutes + 720) % 1440 : minutes;
          return { at: clockWords(at), name, text: frame(write(at), name, index) };
        });
        // In 2027 "2027 Song" is asked; 20:99 is no time.
        const { moments, asks } = readTimeline(entries.map(({ text }) => text).join(end), {
          date: '2099-06-05',
        });
        expect(asks).toEqual([]);
        expect(moments.map(({ startsAt, name }) => [startsAt, name])).toEqual(
          entries.map(({ at, name }) => [at, name]),
        );
        expect(moments.every(({ inferred }) => !inferred)).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  it('one certain time settles an evening in order, and what was concluded says so', () => {
    fc.assert(
      fc.property(
        evenings,
        fc.nat(),
        fc.constantFrom(...CERTAIN),
        fc.constantFrom(...OPEN),
        (times, pick, sure, open) => {
          const certain = pick % times.length;
          const text = times.map((at, index) => `${index === certain ? sure(at) : open(at)} Song`).join('\n');
          const { moments, asks } = readTimeline(text, { date: DATE });
          expect(asks).toEqual([]);
          expect(moments.map(({ startsAt }) => startsAt)).toEqual(times.map(clockWords));
          expect(moments.map(({ inferred, why }) => [inferred, why !== null])).toEqual(
            times.map((_, index) => [index !== certain, index !== certain]),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('ranges come back with both ends', () => {
    fc.assert(
      fc.property(
        fc.nat(1439),
        fc.integer({ min: 1, max: 719 }),
        fc.constantFrom(...CERTAIN),
        fc.constantFrom('-', ' - ', '–', ' to ', ' until '),
        names,
        (at, lasts, write, between, name) => {
          const { moments } = readTimeline(`${write(at)}${between}${write(at + lasts)} ${name}`, {
            date: DATE,
          });
          expect(moments).toMatchObject([{ startsAt: clockWords(at), endsAt: clockWords(at + lasts), name }]);
        },
      ),
    );
  });

  it('a list without any certain time of the first half of the clock is asked, line by line', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 60, max: 779 }), { minLength: 1, maxLength: 8 }), (times) => {
        const text = times.map((at) => `${hour12(at)}:${minute(at)} Song`).join('\n');
        const { moments, asks } = readTimeline(text, { date: DATE });
        expect(moments).toEqual([]);
        expect(asks).toHaveLength(times.length);
      }),
    );
  });
});

const PIECES = [
  ' ',
  '\t',
  '\n',
  '\r\n',
  ...'7 19 : . 30 | - – / 05/06 pm a.m. Uhr h @ at to until noon midnight ( ) [ ] 1920 June 5 2027 Saturday Cake TOASTS Start End # * 1. 2) , ; … 日 🎂 Time 12 24:00 00:00'.split(
    ' ',
  ),
  '20 min',
  '1 h',
];
const soup = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 200 }),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }).map((pieces) => pieces.join('')),
  fc.array(fc.constantFrom(...PIECES), { maxLength: 60 }).map((pieces) => pieces.join(' ')),
);

describe('any text at all', () => {
  it('is read without a throw; every word of a name stands in its line, in order; nothing else is made up', () => {
    fc.assert(
      fc.property(soup, (text) => {
        const { moments, asks, leftOut, trouble } = readTimeline(text, { date: DATE });
        expect(trouble).toBeNull();
        const lines = text.split(/\r\n|[\n\r\u2028\u2029\u0085\v\f]/u);
        const offered = [
          ...moments,
          ...asks.flatMap(({ choices }) => choices.flatMap((choice) => choice.moments)),
        ];
        for (const { name, startsAt, endsAt, line } of offered) {
          expect(name).not.toBe('');
          expect(name.length).toBeLessThanOrEqual(80);
          // Cells on lines of their own: the name may stand one line further down or up.
          const near = lines.slice(Math.max(0, line - 1)).join(' ');
          const above = lines.slice(0, line).join(' ');
          expect([near, above].some((source) => isDrawnFrom(name, source))).toBe(true);
          for (const time of [startsAt, endsAt])
            if (time !== null) expect(time).toMatch(/^([01]\d|2[0-3]):[0-5]\d$/);
        }
        for (const list of [moments, asks, leftOut])
          expect(list.map(({ line }) => line)).toEqual(list.map(({ line }) => line).sort((a, b) => a - b));
        const told = new Set([...moments, ...asks, ...leftOut].map(({ line }) => line));
        const said = lines.flatMap((line, index) => (/[\p{L}\d]/u.test(line) ? [index + 1] : []));
        // Of two stacked cells one line number stands for both.
        expect(told.size).toBeGreaterThanOrEqual(said.length / 2);
      }),
      { numRuns: 1500 },
    );
  });

  it('a hostile line of the greatest length takes no long time', () => {
    const long = ['7:', '1 ', '12.', 'a ', '- ', '((', '5/', '20 min ', '\t|', 'at '].map((piece) =>
      piece.repeat(10_000).slice(0, 19_999),
    );
    const began = performance.now();
    for (const text of long) readTimeline(text, { date: DATE });
    expect(performance.now() - began).toBeLessThan(3000);
  });
});

/** Whether the signs of a name stand in a text in this order. */
function isDrawnFrom(name: string, text: string): boolean {
  let from = 0;
  for (const sign of name.replace(/\s/gu, '')) {
    const at = text.indexOf(sign, from);
    if (at < 0) return false;
    from = at + sign.length;
  }
  return true;
}

describe('evenings to begin with', () => {
  it('have moments in order, within one night, with names that fit, and read back as they are', () => {
    expect(EVENING_PRESETS).toHaveLength(3);
    expect(new Set(EVENING_PRESETS.map(({ id }) => id)).size).toBe(3);
    for (const preset of EVENING_PRESETS) {
      const after = preset.moments.map(({ afterMin }) => afterMin);
      expect(after).toEqual([...after].sort((a, b) => a - b));
      expect(after[0]).toBe(0);
      expect(after.at(-1)).toBeLessThan(12 * 60);
      const moments = momentsFromPreset(preset, 18 * 60 + 30);
      const text = moments.map(({ startsAt, name }) => `${startsAt} ${name}`).join('\n');
      expect(readTimeline(text, { date: DATE })).toMatchObject({
        moments: moments.map(({ name, startsAt }) => ({ name, startsAt })),
        asks: [],
      });
    }
  });

  it('go on past midnight', () => {
    const [, late] = EVENING_PRESETS;
    expect(late && momentsFromPreset(late, 19 * 60).at(-1)).toMatchObject({
      name: 'Exit',
      startsAt: '01:00',
    });
  });
});
