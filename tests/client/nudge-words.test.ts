import { describe, expect, it } from 'vitest';
import { nudgedOnly, wayOf } from '../../client/screens/assistant/way.ts';
import { turnToward } from '../../client/state/turn-toward.ts';
import { bodyLength, nudgeLines } from '../../client/words/nudge-words.ts';
import { type Nudge, nudgeCarry } from '../../shared/document/commands/nudge-carry.ts';
import { aNight, calledTo, keyOf } from './asked-night.ts';

const mark = { spot: { x: 5, y: 5 }, heightM: 2, facingDeg: 350, tiltDeg: 10, powerStops: -6 };
const own = { headingDeg: 0, stepM: 0.65, units: 'metric', holds: 'umbrella' } as const;

function nudged(...nudges: Nudge[]) {
  const evening = aNight();
  for (const nudge of nudges) {
    evening.later(300);
    nudgeCarry(evening.doc, evening.hand, { standId: 'key', nudge });
  }
  const night = evening.read();
  return { night, asked: keyOf(night) };
}

describe('what a nudge changed', () => {
  it('[ASSIST6] says one line for each thing, in the sense of who carries the stand', () => {
    const to = { ...mark, spot: { x: 4.77, y: 4.77 }, heightM: 2.2, facingDeg: 5, powerStops: -6 + 1 / 3 };
    // Half a step of 0.65 m: 0.325 m, to the north-west of somebody who faces up the plan.
    expect(nudgeLines(mark, to, own)).toEqual([
      'half a step ahead to your left',
      '20 cm higher',
      'power ⅓ up',
      'turn the umbrella 15° to the right',
    ]);
    expect(
      nudgeLines(mark, { ...mark, tiltDeg: 5, powerStops: -7 - 2 / 3 }, { ...own, holds: 'head' }),
    ).toEqual(['power 1⅔ down', 'tilt it 5° up']);
    expect(nudgeLines(mark, mark, own)).toEqual([]);
  });

  it('[ASSIST6] measures short moves by the body', () => {
    const said = [0.1, 0.325, 0.65, 0.975, 1.3, 2].map((lengthM) => bodyLength(lengthM, 0.65, 'metric'));
    expect(said).toEqual(['10 cm', 'half a step', 'a step', 'a step and a half', 'two steps', '2 m']);
  });

  it('[ASSIST6][DOC23] several quick nudges are one line each, the same thing twice one line', () => {
    const { night, asked } = nudged(
      { kind: 'height', byM: 0.1 },
      { kind: 'power', byStops: 1 / 3 },
      { kind: 'height', byM: 0.1 },
    );
    const way = wayOf(night, asked, { facingId: 'couple', stepM: 0.65 });
    expect(way.lines).toEqual(['20 cm higher', 'Power ⅓ up']);
    expect(way.kind).toBe('stay');
    expect(nudgedOnly(asked)).not.toBeNull();
  });

  it('[ASSIST6] a nudge of a stand that is still on its way keeps the whole way', () => {
    const evening = calledTo({ spot: { x: 15.8, y: 6.4 } });
    nudgeCarry(evening.doc, evening.hand, { standId: 'key', nudge: { kind: 'height', byM: 0.2 } });
    const night = evening.read();
    const way = wayOf(night, keyOf(night), { facingId: 'couple', stepM: 0.65 });
    expect(nudgedOnly(keyOf(night))).toBeNull();
    expect(way.lines[0]).toBe('Toward the bar, stop 1 m short of it');
  });
});

describe('an umbrella turned in the camera’s sense', () => {
  it('[ASSIST3] comes to face more to that side, whether it faces the camera or away from it', () => {
    const night = aNight().read();
    // The camera at (9.4, 10.2) looks at (9, 6); its right, a quarter turn clockwise of that way.
    const right = { x: 4.2, y: -0.4 };
    const toRight = (deg: number) =>
      Math.sin((deg * Math.PI) / 180) * right.x - Math.cos((deg * Math.PI) / 180) * right.y;
    for (const facingDeg of [0, 40, 70, 130, 180, 230, 290, 330]) {
      const byDeg = turnToward(night, facingDeg, 'right', 15) ?? 0;
      expect(toRight(facingDeg + byDeg)).toBeGreaterThan(toRight(facingDeg));
      expect(turnToward(night, facingDeg, 'left', 15)).toBe(-byDeg);
    }
  });
});
