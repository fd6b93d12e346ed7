import { type TurnWord, turnWords } from '../../core/guidance/bearing.ts';
import type { HandSignals, LegSignal } from '../state/hand-signals.ts';

const LEAD: Record<TurnWord, string> = {
  ahead: 'Point past them',
  'ahead-right': 'Point past them, to your right',
  right: 'Point to your right',
  'behind-right': 'Point toward you, to your right',
  behind: 'Point toward you',
  'behind-left': 'Point toward you, to your left',
  left: 'Point to your left',
  'ahead-left': 'Point past them, to your left',
};

const OWN: Record<TurnWord, string> = {
  ahead: 'ahead',
  'ahead-right': 'ahead to their right',
  right: 'their right',
  'behind-right': 'behind them to the right',
  behind: 'behind them',
  'behind-left': 'behind them to the left',
  left: 'their left',
  'ahead-left': 'ahead to their left',
};

const fingersWords = (count: number) => `${count} ${count === 1 ? 'finger' : 'fingers'}`;

/** "1 finger: K". */
export const whichWords = ({ letter, fingers }: HandSignals): string => `${fingersWords(fingers)}: ${letter}`;

/** "Point to your right: their left, as they look at you." */
export const armWords = ({ armDeg, ownDeg }: LegSignal): string =>
  `${LEAD[turnWords(armDeg)]}: ${OWN[turnWords(ownDeg)]}, as they look at you`;

/** "13 steps: a fist and 3 fingers". */
export function stepsWords(steps: number): string {
  if (steps < 1) return 'half a step: finger and thumb apart';
  const [fists, rest] = [Math.floor(steps / 10), steps % 10];
  const fist = fists === 0 ? [] : [fists === 1 ? 'a fist' : `${fists} fists`];
  const parts = [...fist, ...(rest > 0 ? [fingersWords(rest)] : [])];
  return `${steps} ${steps === 1 ? 'step' : 'steps'}: ${parts.join(' and ')}`;
}
