import { LEAVE_OUT } from './choices.ts';
import type { ReadLine } from './timeline.ts';

const isLoneTime = ({ reading }: ReadLine) => reading.kind === 'timed' && reading.name === '';

/** Whether two kinds take turns without exception. */
const takeTurns = (lines: readonly ReadLine[]): boolean =>
  lines.length % 2 === 0 &&
  lines.every(
    (read, index) =>
      (isLoneTime(read) || read.reading.kind === 'plain') &&
      (index === 0 || isLoneTime(read) !== isLoneTime(lines[index - 1] as ReadLine)),
  );

function joined(time: ReadLine, name: ReadLine): ReadLine {
  if (time.reading.kind !== 'timed' || name.reading.kind !== 'plain') return time;
  return {
    line: time.line,
    text: `${time.text.trim()} / ${name.text.trim()}`,
    reading: { ...time.reading, name: name.reading.name, note: name.reading.note },
  };
}

/**
 * Joins times and names that stand on lines of their own, as the cells of a table copied from a mail do. Only where
 * they take turns from the first to the last; else a time without a name is asked about.
 */
export function pairStacked(lines: readonly ReadLine[]): ReadLine[] {
  const said = lines.filter(({ reading }) => reading.kind !== 'left-out');
  const [first] = said;
  if (!said.some(isLoneTime) || !first) return [...lines];
  if (takeTurns(said)) {
    const timeFirst = isLoneTime(first);
    const pairs = said.flatMap((read, index) => {
      const other = said[index + 1];
      if (index % 2 === 1 || !other) return [];
      return [timeFirst ? joined(read, other) : joined(other, read)];
    });
    const heads = lines.filter(({ reading }) => reading.kind === 'left-out');
    return [...heads, ...pairs].sort((a, b) => a.line - b.line);
  }
  return lines.map((read) =>
    isLoneTime(read)
      ? {
          ...read,
          reading: {
            kind: 'doubt',
            question: 'This time has no name beside it. Write one in its line, or leave it out.',
            choices: [LEAVE_OUT],
            holdsTime: true,
          },
        }
      : read,
  );
}
