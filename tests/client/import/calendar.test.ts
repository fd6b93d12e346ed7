import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MOST_CALENDAR_SIGNS, MOST_MOMENTS, readCalendar } from '../../../client/import/calendar.ts';

const DATE = '2027-06-05';
const read = (text: string, phoneZone = 'Europe/Berlin', date = DATE) =>
  readCalendar(text, { date, phoneZone });

const event = (...lines: string[]) => ['BEGIN:VEVENT', 'UID:x', ...lines, 'END:VEVENT'];
const calendar = (lines: readonly string[], end = '\r\n') =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//invented//test//EN', ...lines, 'END:VCALENDAR', ''].join(end);
const times = (text: string, phoneZone?: string) =>
  read(text, phoneZone).moments.map(({ name, startsAt, endsAt }) => [name, startsAt, endsAt]);

/** New York from 2007 on: RFC 5545, section 3.6.5, the example's rules of the last change. */
const NEW_YORK = [
  'BEGIN:VTIMEZONE',
  'TZID:Eastern by hand',
  'BEGIN:STANDARD',
  'DTSTART:20071104T020000',
  'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=11',
  'TZOFFSETFROM:-0400',
  'TZOFFSETTO:-0500',
  'TZNAME:EST',
  'END:STANDARD',
  'BEGIN:DAYLIGHT',
  'DTSTART:20070311T020000',
  'RRULE:FREQ=YEARLY;BYDAY=2SU;BYMONTH=3',
  'TZOFFSETFROM:-0500',
  'TZOFFSETTO:-0400',
  'TZNAME:EDT',
  'END:DAYLIGHT',
  'END:VTIMEZONE',
];

describe('a calendar file', () => {
  const EVENING = [
    ...event('DTSTART:20270605T203000', 'SUMMARY:Toasts'),
    ...event('DTSTART:20270605T190000', 'DTEND:20270605T191500', 'SUMMARY:Entrances'),
    ...event('DTSTART:20270605T193000', 'DURATION:PT1H', 'SUMMARY:Dinner'),
    ...event('DTSTART:20270606T003000', 'SUMMARY:Last song'),
  ];

  it.each(['\r\n', '\n'])(
    'is read in the order of the night, past midnight too, with ends of line %j',
    (end) => {
      const reading = read(calendar(EVENING, end));
      expect(times(calendar(EVENING, end))).toEqual([
        ['Entrances', '19:00', '19:15'],
        ['Dinner', '19:30', '20:30'],
        ['Toasts', '20:30', null],
        ['Last song', '00:30', null],
      ]);
      expect(reading.moments.map(({ line }) => line)).toEqual([2, 3, 1, 4]);
      expect([reading.leftOut, reading.notes, reading.trouble]).toEqual([[], [], null]);
    },
  );

  it('keeps escaped commas, semicolons and backslashes, and folded lines (RFC 5545, 3.3.11 and 3.1)', () => {
    const lines = event(
      'DTSTART:20270605T190000',
      'SUMMARY:Toasts\\, speeches\\; thanks \\\\ and\\na so',
      ' ng for',
      '\t the band',
    );
    for (const end of ['\r\n', '\n'])
      expect(times(calendar(lines, end))[0]?.[0]).toBe('Toasts, speeches; thanks \\ and a song for the band');
  });

  it('whole days have no time and come first', () => {
    const lines = [...EVENING, ...event('DTSTART;VALUE=DATE:20270605', 'SUMMARY:The day')];
    expect(times(calendar(lines))[0]).toEqual(['The day', null, null]);
  });

  it('of several days the night’s is taken and the others are listed', () => {
    const lines = [
      ...event('DTSTART:20270604T180000', 'SUMMARY:Rehearsal'),
      ...EVENING,
      ...event('DTSTART:20270606T100000', 'SUMMARY:Brunch'),
    ];
    const { moments, leftOut } = read(calendar(lines));
    expect(moments).toHaveLength(4);
    expect(leftOut).toEqual([
      { name: 'Rehearsal', why: 'it is on 2027-06-04' },
      { name: 'Brunch', why: 'it is on 2027-06-06' },
    ]);
    expect(read(calendar(lines), 'UTC', '2027-07-01').trouble).toContain('2027-07-01');
    expect(read(calendar(lines), 'UTC', '2027-07-01').leftOut).toHaveLength(6);
  });

  it('of a single other day that day is taken, with a note', () => {
    const { moments, notes } = read(calendar(EVENING), 'UTC', '2027-06-12');
    expect(moments).toHaveLength(4);
    expect(notes).toEqual(['The calendar is for 2027-06-05; the night is on 2027-06-12.']);
  });

  it('what repeats is taken once with a note; what is cancelled or nameless is listed', () => {
    const { moments, notes, leftOut } = read(
      calendar([
        ...event('DTSTART:20270605T190000', 'RRULE:FREQ=DAILY', 'SUMMARY:Toasts'),
        ...event('DTSTART:20270605T200000', 'STATUS:CANCELLED', 'SUMMARY:Cake'),
        ...event('DTSTART:20270605T210000'),
        ...event('DTSTART:when it is dark', 'SUMMARY:Dancing'),
        ...event('SUMMARY:Exit'),
      ]),
    );
    expect(moments.map(({ name }) => name)).toEqual(['Toasts']);
    expect(notes).toEqual([expect.stringMatching(/“Toasts” repeats/)]);
    expect(leftOut).toEqual([
      { name: 'Cake', why: 'it is cancelled' },
      { name: '', why: 'it has no name' },
      { name: 'Dancing', why: 'its time cannot be read' },
      { name: 'Exit', why: 'its time cannot be read' },
    ]);
  });
});

describe('time zones', () => {
  // UTC+2 in Berlin and UTC−4 in New York in June: IANA time zone database, "europe" and "northamerica".
  const UTC = event('DTSTART:20270605T230000Z', 'DTEND:20270605T233000Z', 'SUMMARY:Cake');

  it('UTC is brought to the phone’s zone, or to the one that the calendar names', () => {
    expect(times(calendar(UTC), 'America/New_York')).toEqual([['Cake', '19:00', '19:30']]);
    expect(times(calendar(UTC), 'Europe/Berlin')).toEqual([['Cake', '01:00', '01:30']]);
    expect(times(calendar(['X-WR-TIMEZONE:America/New_York', ...UTC]), 'Europe/Berlin')).toEqual([
      ['Cake', '19:00', '19:30'],
    ]);
  });

  it('a named zone is the night’s: its times stand as written wherever the phone thinks it is', () => {
    const lines = event('DTSTART;TZID=America/New_York:20270605T190000', 'SUMMARY:Toasts');
    for (const zone of ['Europe/Berlin', 'Asia/Tokyo', 'UTC'])
      expect(times(calendar(lines), zone)).toEqual([['Toasts', '19:00', null]]);
    expect(times(calendar([...lines, ...UTC]), 'Asia/Tokyo')).toEqual([
      ['Toasts', '19:00', null],
      ['Cake', '19:00', '19:30'],
    ]);
  });

  it('a zone that only the file describes is followed, summer and winter', () => {
    const toasts = event('DTSTART;TZID="Eastern by hand":20270605T190000', 'SUMMARY:Toasts');
    expect(times(calendar([...NEW_YORK, ...toasts, ...UTC]), 'Europe/Berlin')).toEqual([
      ['Toasts', '19:00', null],
      ['Cake', '19:00', '19:30'],
    ]);
    const winter = [
      ...event('DTSTART;TZID="Eastern by hand":20271204T190000', 'SUMMARY:Toasts'),
      ...event('DTSTART:20271205T000000Z', 'SUMMARY:Cake'),
    ];
    expect(
      read(calendar([...NEW_YORK, ...winter]), 'UTC', '2027-12-04').moments.map((each) => each.startsAt),
    ).toEqual(['19:00', '19:00']);
  });

  it('a second zone is converted when the file describes it, else noted', () => {
    const most = [1, 2].flatMap(() => event('DTSTART;TZID=Europe/Berlin:20270605T210000', 'SUMMARY:Dancing'));
    const described = event('DTSTART;TZID="Eastern by hand":20270605T160000', 'SUMMARY:Cake');
    expect(times(calendar([...NEW_YORK, ...most, ...described])).at(-1)).toEqual(['Cake', '22:00', null]);
    const { moments, notes } = read(
      calendar([...most, ...event('DTSTART;TZID=Nowhere:20270605T160000', 'SUMMARY:Cake')]),
    );
    expect(moments[0]).toMatchObject({ name: 'Cake', startsAt: '16:00' });
    expect(notes).toEqual([expect.stringContaining('Nowhere')]);
  });
});

describe('files that are none', () => {
  it.each([
    ['', 'empty'],
    ['  \r\n', 'empty'],
    ['7 pm Dinner', 'no calendar file'],
    ['BEGIN:VCARD\r\nVERSION:4.0\r\nFN:Nobody\r\nEND:VCARD\r\n', 'no calendar file'],
    [calendar(event('DTSTART:20270605T190000', 'SUMMARY:Cake')).slice(0, 110), 'no calendar file'],
    [calendar([]), 'no entry'],
    [`BEGIN:VCALENDAR${' '.repeat(MOST_CALENDAR_SIGNS)}`, '1000000'],
  ])('%#: a reason is given', (text, reason) => {
    const reading = read(text);
    expect(reading.moments).toEqual([]);
    expect(reading.trouble).toContain(reason);
  });

  it('more moments than a night has are listed, not dropped unseen', () => {
    const lines = Array(MOST_MOMENTS + 5)
      .fill(event('DTSTART:20270605T190000', 'SUMMARY:Song'))
      .flat();
    const { moments, leftOut } = read(calendar(lines));
    expect([moments.length, leftOut.length]).toEqual([MOST_MOMENTS, 5]);
  });

  it('a zone without a name does no harm', () => {
    const nameless = NEW_YORK.filter((line) => !line.startsWith('TZID'));
    const lines = event('DTSTART;TZID=Europe/Berlin:20270605T190000', 'SUMMARY:Cake');
    expect(times(calendar([...nameless, ...lines]))).toEqual([['Cake', '19:00', null]]);
  });

  it('whatever is cut, changed or mixed in, the answer is moments or a reason', () => {
    const whole = calendar([
      ...NEW_YORK,
      ...event('DTSTART;TZID="Eastern by hand":20270605T190000', 'SUMMARY:A\\, b'),
    ]);
    fc.assert(
      fc.property(fc.nat(whole.length), fc.nat(40), fc.string({ maxLength: 20 }), (at, cut, put) => {
        const { moments, leftOut, trouble } = read(whole.slice(0, at) + put + whole.slice(at + cut));
        expect(moments.length + leftOut.length > 0 || trouble !== null).toBe(true);
        for (const { startsAt } of moments) expect(startsAt ?? '00:00').toMatch(/^([01]\d|2[0-3]):[0-5]\d$/);
      }),
      { numRuns: 500 },
    );
  });
});
