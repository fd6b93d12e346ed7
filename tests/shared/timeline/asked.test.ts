import { describe, expect, it } from 'vitest';
import { MOST_LINES, MOST_SIGNS, readTimeline } from '../../../shared/timeline/read-timeline.ts';

const DATE = '2027-06-05';
const read = (text: string, answers?: ReadonlyMap<number, string>) =>
  readTimeline(text, answers ? { date: DATE, answers } : { date: DATE });

/** What one line is asked with: the labels, without "leave it out", which every question ends with. */
function labels(text: string): string[] {
  const { moments, asks } = read(text);
  expect(moments).toEqual([]);
  expect(asks).toHaveLength(1);
  const choices = asks[0]?.choices ?? [];
  expect(choices.at(-1)).toEqual({ label: 'leave it out', moments: [] });
  return choices.slice(0, -1).map(({ label }) => label);
}

describe('what a line does not say is asked, with the choices', () => {
  it.each([
    ['9:30 Cake', ['09:30', '21:30', 'no time']],
    ['Cake cutting @ 9', ['09:00', '21:00', 'no time']],
    ['Cake at 9.30', ['09:30', '21:30', 'no time']],
    ['9 o’clock Cake', ['09:00', '21:00', 'no time']],
    ['12:00 Song', ['12:00', '00:00', 'no time']],
    ['9 Uhr Kuchen', ['09:00', '21:00', 'no time']],
    ['09:30 Cake', ['09:30', '21:30', 'no time']],
    ['7:00-7:30 Dinner', ['07:00 to 07:30', '19:00 to 19:30', 'no time']],
    ['11:30–1:00 Party', ['11:30 to 13:00', '23:30 to 01:00', 'no time']],
    ['13 am Tea', ['13:00', '01:00', 'no time']],
    ['9 Cake', ['09:00', '21:00', 'no time']],
    ['930 Cake', ['09:30', '21:30', 'no time']],
    ['First dance 1920', ['19:20', 'no time']],
    ['8ish Cake', ['08:00', '20:00', 'no time']],
    ['20 Uhr 30 Torte', ['20:00', 'no time']],
    ['2027 at the mill', ['20:27', 'no time']],
    ['Midnight buffet', ['00:00', 'no time']],
    ['05/06 Toasts', ['05:00 to 06:00', '17:00 to 18:00', 'no time']],
    ['19:00 Dinner 20:30 Toasts', ['2 entries', '19:00 to 20:30', '19:00', '20:30']],
    ['19:00/20:30 Dinner', ['19:00 to 20:30', '19:00', '20:30']],
    ['19:00\t19:30\tDinner', ['19:00 to 19:30', '19:00', '19:30']],
    ['8 pm – 2 cakes', ['20:00 to 02:00', '20:00']],
    ['Table 5 to 8 pm', ['17:00 to 20:00', '20:00']],
    ['Cake', ['no time']],
  ] as const)('%j', (text, expected) => {
    expect(labels(text)).toEqual(expected);
  });

  it('neither neighbour decides: out of order, too far, or both readings between them', () => {
    for (const text of ['14:00 Photos\n1 pm Tea\n9:30 Cake', '7 am Hair\n8:00 Cake\n9 pm Song'])
      expect(read(text).asks).toMatchObject([{ question: expect.stringMatching(/^Is that \d\d:\d\d or/) }]);
  });

  it('a letter’s long sentence is asked, its name cut to what a moment may have', () => {
    const { moments, asks } = read(`7 pm ${'please remember that the vendors eat as well '.repeat(5)}`);
    expect(moments).toEqual([]);
    expect(asks[0]?.choices[0]?.moments[0]?.name.length).toBeLessThanOrEqual(80);
  });

  it('two entries in one line can be taken apart', () => {
    const choice = read('18:30 Drinks / 19:30 Dinner').asks[0]?.choices[0];
    expect(choice?.moments).toMatchObject([
      { startsAt: '18:30', name: 'Drinks', line: 1 },
      { startsAt: '19:30', name: 'Dinner', line: 1 },
    ]);
  });
});

describe('answers', () => {
  const LIST = '7:00 Dinner\n8:00 Toasts\n9:00 Dancing';

  it('one decides the lines beside it', () => {
    expect(read(LIST).asks).toHaveLength(3);
    const { moments, asks } = read(LIST, new Map([[1, '19:00']]));
    expect(asks).toEqual([]);
    expect(moments.map(({ startsAt, inferred }) => [startsAt, inferred])).toEqual([
      ['19:00', false],
      ['20:00', true],
      ['21:00', true],
    ]);
  });

  it('every choice that is offered is taken, one that is not is ignored', () => {
    for (const text of ['9:30 Cake', '05/06 Toasts', '19:00 A 20:30 B', 'Cake', '8 pm – 2 cakes', '9 Cake'])
      for (const { label, moments } of read(text).asks[0]?.choices ?? [])
        expect(read(text, new Map([[1, label]]))).toMatchObject({ moments, asks: [] });
    expect(read('9:30 Cake', new Map([[1, '25:00']]))).toEqual(read('9:30 Cake'));
    expect(read('7 pm A\nB\n8 pm C', new Map([[2, 'nonsense']]))).toEqual(read('7 pm A\nB\n8 pm C'));
  });

  it('a settled line can be left out or given another time afterwards', () => {
    expect(read('8 pm A\n9:30 B\n10 pm C', new Map([[2, 'leave it out']])).moments).toHaveLength(2);
    expect(read('8 pm A\n9:30 B\n10 pm C', new Map([[2, '09:30']])).moments[1]).toMatchObject({
      startsAt: '09:30',
      inferred: false,
    });
  });
});

describe('limits', () => {
  it('200 lines and 20,000 signs are read, more is refused with the number', () => {
    expect(read(Array(MOST_LINES).fill('7 pm Song').join('\n')).moments).toHaveLength(MOST_LINES);
    expect(read('\n'.repeat(MOST_LINES)).trouble).toContain('201');
    expect(read(`19:00 Song\n${' '.repeat(MOST_SIGNS - 11)}`).moments).toHaveLength(1);
    expect(read(' '.repeat(MOST_SIGNS + 1))).toMatchObject({
      moments: [],
      asks: [],
      trouble: expect.stringContaining('20001'),
    });
  });

  it('nothing is read from nothing, without trouble', () => {
    for (const text of ['', '\n\n', ' \t '])
      expect(read(text)).toEqual({ moments: [], asks: [], leftOut: [], trouble: null });
  });
});
