import { describe, expect, it } from 'vitest';
import { aloud, spokenCard } from '../../client/words/spoken-words.ts';

describe('a card as it is spoken', () => {
  it('[ASSIST9] writes out signs and short units', () => {
    expect(aloud('Toward the bar, stop 1 m short of it')).toBe('Toward the bar, stop 1 metre short of it');
    expect(aloud('4.5 m, ≈ 7 steps')).toBe('4.5 metres, about 7 steps');
    expect(aloud('1.1 m')).toBe('1.1 metres');
    expect(aloud('Power ⅔ down')).toBe('Power two thirds down');
    expect(aloud('20 cm higher, 6 ft, 8 in')).toBe('20 centimetres higher, 6 feet, 8 inches');
    expect(aloud('Power 1⅓ up, turn the umbrella 15° to the right')).toBe(
      'Power 1 and one third up, turn the umbrella 15 degrees to the right',
    );
  });

  it('[ASSIST9] says the stand, the way and how far; for a stand that stays nothing to walk', () => {
    const far = { main: '4 m', steps: '≈ 6 steps' };
    const way = {
      kind: 'way',
      lines: ['Toward the bar'],
      distance: far,
      whole: '6 m, ≈ 9 steps in all',
    } as const;
    expect(spokenCard('K', way)).toBe(
      'K. Toward the bar. 4 metres, about 6 steps. 6 metres, about 9 steps in all',
    );
    const stay = {
      kind: 'stay',
      lines: ['20 cm higher'],
      distance: { main: 'stay', steps: null },
      whole: null,
    } as const;
    expect(spokenCard('B', stay)).toBe('B. 20 centimetres higher');
  });
});
