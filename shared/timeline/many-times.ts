import { cut, doubt, momentOf, spanChoices } from './choices.ts';
import { spanWords } from './clock.ts';
import type { TimeGroup } from './join-times.ts';
import { blanked, nameIn, tidy } from './name-in.ts';
import type { LineReading, TimelineChoice } from './timeline.ts';

/** A line, and the same with all but its name and times blanked. */
interface TimedLine {
  readonly line: number;
  readonly body: string;
  readonly text: string;
}

/** "19:00 Dinner 20:30 Toasts" as two entries, where each time has a name after it. */
function split(groups: readonly TimeGroup[], { text, line }: TimedLine): TimelineChoice[] {
  const parts = groups.map(({ to }, index) => tidy(text.slice(to, groups[index + 1]?.from)));
  const starts = tidy(text.slice(0, groups[0]?.from)) === '';
  if (!starts || parts.some((part) => !/\p{L}/u.test(part)) || groups.some(({ spans }) => spans.length > 1))
    return [];
  const moments = groups.map(({ spans }, index) =>
    momentOf(line, cut({ name: parts[index] ?? '', note: null }), spans[0] ?? null),
  );
  return [{ label: `${moments.length} entries`, moments }];
}

/** Several times in a line that nothing joins: which is meant is asked, and whether they are entries of their own. */
export function manyTimes(groups: readonly TimeGroup[], timed: TimedLine): LineReading {
  const left = blanked(
    timed.text,
    groups.map(({ from, to }) => [from, to] as const),
  );
  const called = cut(nameIn(timed.body, left));
  const [said, ...others] = groups.map(({ spans }) => spans.map(spanWords).join());
  const [same] = groups;
  // "19:00 (7 pm)" says one time twice.
  if (same && called.name !== '' && others.every((other) => other === said))
    return { kind: 'timed', ...called, spans: same.spans, clock24: same.clock24 };
  const [first, second] = groups.map(({ spans }) => spans);
  const pairs =
    groups.length === 2 && first?.length === 1 && second?.length === 1 && first[0]?.endMin === null
      ? [{ startMin: first[0].startMin, endMin: second[0]?.startMin ?? null }]
      : [];
  const spans = [...pairs, ...groups.flatMap((group) => group.spans)];
  const once = spans.filter(
    (span, index) => spans.findIndex((other) => spanWords(other) === spanWords(span)) === index,
  );
  return doubt(
    'Which of these times is meant?',
    [...split(groups, timed), ...(called.name === '' ? [] : spanChoices(timed.line, called, once))],
    true,
  );
}
