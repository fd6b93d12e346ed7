import { describe, expect, it } from 'vitest';
import { readTimeline } from '../../../shared/timeline/read-timeline.ts';

const DATE = '2027-06-05';
const read = (text: string) => readTimeline(text, { date: DATE });
const brief = (text: string) =>
  read(text).moments.map(({ startsAt, endsAt, name }) => [startsAt, endsAt, name] as const);

/** Forms as running orders are written (common practice); the names are ours. */
const FORMS: readonly (readonly [text: string, startsAt: string, endsAt: string | null, name: string])[] = [
  ['7:05 pm Entrances', '19:05', null, 'Entrances'],
  ['7:05 PM - Entrances', '19:05', null, 'Entrances'],
  ['7:05pm: Entrances', '19:05', null, 'Entrances'],
  ['7.05 p.m. Entrances', '19:05', null, 'Entrances'],
  ['7:05 p. m. Entrances', '19:05', null, 'Entrances'],
  ['7:05p Entrances', '19:05', null, 'Entrances'],
  ['7 pm Entrances', '19:00', null, 'Entrances'],
  ['730pm Entrances', '19:30', null, 'Entrances'],
  ['11 am Tea', '11:00', null, 'Tea'],
  ['12:30 am Last song', '00:30', null, 'Last song'],
  ['12:30 pm Lunch', '12:30', null, 'Lunch'],
  ['19:20 – Toasts', '19:20', null, 'Toasts'],
  ['19:20: Toasts', '19:20', null, 'Toasts'],
  ['19:20,Toasts', '19:20', null, 'Toasts'],
  ['19:20:00;Toasts', '19:20', null, 'Toasts'],
  ['19:20\tToasts', '19:20', null, 'Toasts'],
  ['| 19:20 | Toasts |', '19:20', null, 'Toasts'],
  ['[19:20] Toasts', '19:20', null, 'Toasts'],
  ['19.20 Uhr Reden', '19:20', null, 'Reden'],
  ['19.20 Reden', '19:20', null, 'Reden'],
  ['19 Uhr Reden', '19:00', null, 'Reden'],
  ['Reden um 19:20 Uhr', '19:20', null, 'Reden'],
  ['19h20 Discours', '19:20', null, 'Discours'],
  ['19 h Discours', '19:00', null, 'Discours'],
  ['1920 First dance', '19:20', null, 'First dance'],
  ['1920h First dance', '19:20', null, 'First dance'],
  ['First dance – 1920', '19:20', null, 'First dance'],
  ['First dance 19:20', '19:20', null, 'First dance'],
  ['First dance (7:20 pm)', '19:20', null, 'First dance'],
  ['First dance\t7:20 PM', '19:20', null, 'First dance'],
  ['First dance @ 7:20pm', '19:20', null, 'First dance'],
  ['First dance at 7 pm', '19:00', null, 'First dance'],
  ['approx. 7:30 pm Toasts', '19:30', null, 'Toasts'],
  ['• 7:05 pm Entrances', '19:05', null, 'Entrances'],
  ['- [ ] 7:05 pm Entrances', '19:05', null, 'Entrances'],
  ['* **7:05 pm** Entrances', '19:05', null, 'Entrances'],
  ['3. 7:05 pm Entrances', '19:05', null, 'Entrances'],
  ['3) 19:05 Entrances', '19:05', null, 'Entrances'],
  ['(3) Entrances 19:05', '19:05', null, 'Entrances'],
  ['7pm-7:30pm dinner', '19:00', '19:30', 'dinner'],
  ['7 – 7:30 pm Dinner', '19:00', '19:30', 'Dinner'],
  ['11-1 am Party', '23:00', '01:00', 'Party'],
  ['7 pm until 8 Dinner', '19:00', '20:00', 'Dinner'],
  ['from 7 to 8 pm Dinner', '19:00', '20:00', 'Dinner'],
  ['Dinner from 7 until 8:30pm', '19:00', '20:30', 'Dinner'],
  ['19:00–20:30: Dinner', '19:00', '20:30', 'Dinner'],
  ['1900-2030 Dinner', '19:00', '20:30', 'Dinner'],
  ['19–20 Uhr Essen', '19:00', '20:00', 'Essen'],
  ['22:30 bis 00:30 Tanz', '22:30', '00:30', 'Tanz'],
  ['7 pm Dinner (90 min)', '19:00', '20:30', 'Dinner'],
  ['20:00 Toasts, 20 min', '20:00', '20:20', 'Toasts'],
  ['20:00 Dinner - 1.5 hours', '20:00', '21:30', 'Dinner'],
  ['23:30 Party 1 h 30 min', '23:30', '01:00', 'Party'],
  ['20:00 | 20 min | Toasts', '20:00', '20:20', 'Toasts'],
  ['Noon: Photos', '12:00', null, 'Photos'],
  ['Photos at noon', '12:00', null, 'Photos'],
  ['12 noon Photos', '12:00', null, 'Photos'],
  ['midnight\tExit', '00:00', null, 'Exit'],
  ['24:00 Exit', '00:00', null, 'Exit'],
  ['00:30 Exit', '00:30', null, 'Exit'],
  ['Saturday 5 June 2027, 19:00 Toasts', '19:00', null, 'Toasts'],
  ['5.6. 19:00 Toasts', '19:00', null, 'Toasts'],
  ['5. 6. 2027 19:00 Toasts', '19:00', null, 'Toasts'],
  ['Sa, 5. Juni 19:00 Toasts', '19:00', null, 'Toasts'],
  ['1. 12.00 p.m. Lunch', '12:00', null, 'Lunch'],
  ['5.6.2027 19:00 Toasts', '19:00', null, 'Toasts'],
  ['2027-06-05\t19:00\tToasts', '19:00', null, 'Toasts'],
  ['05/06 19:00 Toasts', '19:00', null, 'Toasts'],
  ['7\u202fpm\u00a0Toasts', '19:00', null, 'Toasts'],
  ['2 hours of dancing 9 pm', '21:00', null, '2 hours of dancing'],
  ['Table 5 – 19:00', '19:00', null, 'Table 5'],
  ['19:00 (7 pm) Dinner', '19:00', null, 'Dinner'],
  ['7:30pm-ish Toasts', '19:30', null, 'Toasts'],
  ['2 cakes 19:00', '19:00', null, '2 cakes'],
];

describe('a line of a running order', () => {
  it.each(FORMS)('%j begins at %s', (text, startsAt, endsAt, name) => {
    const { moments, asks, leftOut } = read(text);
    expect(moments).toEqual([{ name, startsAt, endsAt, note: null, line: 1, inferred: false, why: null }]);
    expect([asks, leftOut]).toEqual([[], []]);
  });
});

describe('lines beside each other', () => {
  it('half past nine between eight and ten in the evening is in the evening, and says why', () => {
    const { moments, asks } = read('8 pm Toasts\n9:30 Cake\n10 pm Dancing');
    expect(asks).toEqual([]);
    expect(moments[1]).toMatchObject({
      name: 'Cake',
      startsAt: '21:30',
      inferred: true,
      why: 'between 20:00 (line 1) and 22:00 (line 3)',
    });
    expect(moments.map(({ inferred }) => inferred)).toEqual([false, true, false]);
  });

  it('one neighbour is enough within six hours, on either side and over midnight', () => {
    const list = '7:00 Dinner\n8:00 Toasts\n10 pm Dancing\n11:30 Cake\n12:00 Song\n1:15 Exit';
    expect(brief(list).map(([at]) => at)).toEqual(['19:00', '20:00', '22:00', '23:30', '00:00', '01:15']);
    expect(read(list).moments.map(({ why }) => why)).toEqual([
      'before 22:00 (line 3)',
      'between 19:00 (line 1) and 22:00 (line 3)',
      null,
      'after 22:00 (line 3)',
      'after 23:30 (line 4)',
      'after 00:00 (line 5)',
    ]);
  });

  it('half past midnight after eleven is the same night: what follows it is asked of no other day', () => {
    expect(brief('23:00 Dancing\n00:30 Song\n1:10 Exit')).toEqual([
      ['23:00', null, 'Dancing'],
      ['00:30', null, 'Song'],
      ['01:10', null, 'Exit'],
    ]);
  });

  it('a leading zero in a list on the 24-hour clock is the morning, unless the order says otherwise', () => {
    const day = read('09:00 Hair\n16:00 Photos');
    expect(day.moments[0]).toMatchObject({ startsAt: '09:00', inferred: true });
    expect(day.moments[0]?.why).toContain('24-hour clock');
    expect(brief('19:00 Toasts\n09:30 Cake\n22:00 Dancing')[1]?.[0]).toBe('21:30');
    expect(read('09:00 Hair\n10:00 Photos').asks).toHaveLength(2);
  });

  it('numbering is not a time, with a dot and without', () => {
    expect(brief('1. 19:00 Entrances\n2. Dinner\n3. 20:30 Toasts').map(([, , name]) => name)).toEqual([
      'Entrances',
      'Dinner',
      'Toasts',
    ]);
    expect(brief('1\tEntrances\t19:00\n2\tDinner\t19:30\n3\tToasts\t20:30')).toEqual([
      ['19:00', null, 'Entrances'],
      ['19:30', null, 'Dinner'],
      ['20:30', null, 'Toasts'],
    ]);
  });

  it('a table: its head is left out, further columns are a note, two headed times are a range', () => {
    const { moments, leftOut } = read('Start\tEnd\tWhat\tWho\n19:00\t19:30\tEntrances\tthe band');
    expect(moments).toMatchObject([
      { startsAt: '19:00', endsAt: '19:30', name: 'Entrances', note: 'the band', line: 2 },
    ]);
    expect(leftOut).toEqual([{ line: 1, text: 'Start\tEnd\tWhat\tWho', why: 'the head of a table' }]);
    expect(brief('| Time | Event |\n|---|---|\n| 7pm | Dinner |')).toEqual([['19:00', null, 'Dinner']]);
  });

  it('cells of a table on lines of their own are joined, times first or names first', () => {
    for (const text of ['19:00\nEntrances\n20:00\nDinner', 'Entrances\n19:00\nDinner\n20:00'])
      expect(brief(text)).toEqual([
        ['19:00', null, 'Entrances'],
        ['20:00', null, 'Dinner'],
      ]);
    expect(read('19:00\n20:00\nDinner').asks.length).toBeGreaterThanOrEqual(2);
  });

  it('headings and empty lines give no moment, and headings are listed', () => {
    const { moments, asks, leftOut } = read(
      'Running order\n\nSaturday, 5 June 2027\n# Evening\n19:00 Dinner\n\nDANCING\nMusic:\n-----\n21:00 First dance\n',
    );
    expect(moments.map(({ name, line }) => [name, line])).toEqual([
      ['Dinner', 5],
      ['First dance', 10],
    ]);
    expect(asks).toEqual([]);
    expect(leftOut.map(({ line }) => line)).toEqual([1, 3, 4, 7, 8, 9]);
  });

  it('capitals are no heading where everything is in capitals', () => {
    expect(brief('7 PM DINNER\nTOASTS\n9 PM CAKE').map(([, , name]) => name)).toEqual([
      'DINNER',
      'TOASTS',
      'CAKE',
    ]);
  });

  it('a line without a time is a moment between timed ones and asked outside them', () => {
    const { moments, asks } = read('See you all there\n19:00 Dinner\nToasts\n21:00 Cake\nWarm regards');
    expect(moments).toMatchObject([
      { startsAt: '19:00' },
      { startsAt: null, name: 'Toasts', inferred: false },
      { startsAt: '21:00' },
    ]);
    expect(asks.map(({ line }) => line)).toEqual([1, 5]);
  });

  it('a length without a time stays in the name', () => {
    expect(brief('19:00 Dinner\nToasts (20 min)\n21:00 Cake')[1]).toEqual([null, null, 'Toasts (20 min)']);
  });

  it('lines under another date are asked', () => {
    const { moments, asks } = read(
      'Friday, 4 June 2027\n18:00 Rehearsal\nSaturday, 5 June 2027\n19:00 Dinner',
    );
    expect(moments.map(({ name }) => name)).toEqual(['Dinner']);
    expect(asks).toMatchObject([{ line: 2, choices: [{ label: '18:00' }, { label: 'leave it out' }] }]);
  });
});
