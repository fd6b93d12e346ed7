import { pino } from 'pino';
import { expect, test } from 'vitest';
import { guarded } from '../../../server/signals/guard.ts';

test('[MSG5] a handler that throws is logged and goes no further; one that does not works as it is', () => {
  const lines: string[] = [];
  const log = pino({ level: 'info' }, { write: (line: string) => void lines.push(line) });
  const seen: number[] = [];
  const handler = guarded(log, (number: number) => {
    if (number < 0) throw new Error('below zero');
    seen.push(number);
  });
  handler(1);
  handler(-1);
  handler(2);
  expect(seen).toEqual([1, 2]);
  expect(lines).toHaveLength(1);
  expect(lines[0]).toContain('a signal handler failed');
});
