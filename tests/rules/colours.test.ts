import { describe, expect, it } from 'vitest';
import { colourLiterals } from '../support/rules-colours.ts';
import { contrast, tokensByLevel } from '../support/rules-contrast.ts';
import { filesOf, textOf } from '../support/rules-tree.ts';

const TOKENS = 'client/style/tokens.css';
const GROUND = '--ground';
/** What is read during the night. */
const READ = ['--chalk', '--tape-k', '--tape-b', '--go', '--done', '--warn', '--halt'];
const READ_AT_LEAST = 7; // WCAG 2.2, 1.4.6 (level AAA)
const PLAIN_AT_LEAST = 4.5; // WCAG 2.2, 1.4.3 (level AA)

const levels = tokensByLevel(textOf(TOKENS));

type Tokens = ReadonlyMap<string, string>;

/** What is too faint on its ground, in one light level. */
function tooFaint(tokens: Tokens, pairs: readonly (readonly [string, string, number])[]): string[] {
  return pairs.flatMap(([front, back, least]) => {
    const [one, other] = [tokens.get(front), tokens.get(back)];
    if (!one || !other) return [`${front} on ${back}: one of them is not there`];
    const ratio = contrast(one, other);
    return ratio >= least
      ? []
      : [`${front} (${one}) on ${back} (${other}) has ${ratio.toFixed(2)}, needs ${least}`];
  });
}

function pairsOf(level: string): (readonly [string, string, number])[] {
  return [
    ...READ.map((name) => [name, GROUND, READ_AT_LEAST] as const),
    ['--chalk-soft', GROUND, level === 'dim' ? PLAIN_AT_LEAST : READ_AT_LEAST],
    ['--ink', '--go', PLAIN_AT_LEAST],
  ];
}

describe('colours', () => {
  it('are written down in the tokens alone', () => {
    const files = filesOf(['client'], ['.css', '.ts', '.tsx', '.html']).filter((path) => path !== TOKENS);
    expect(files.length).toBeGreaterThan(20);
    expect(files.flatMap((path) => colourLiterals(path, withoutFirstPaint(path, textOf(path))))).toEqual([]);
  });

  it('of the first paint, which comes before any token, are the ground', () => {
    const page = textOf('client/index.html');
    const painted = [...page.matchAll(FIRST_PAINT)].map((match) => match[1]);
    expect(painted).toEqual([levels.get('normal')?.get(GROUND), levels.get('normal')?.get(GROUND)]);
  });

  it.each(['normal', 'dim', 'bright'])('stand out from the ground in the %s level', (level) => {
    const tokens = levels.get(level);
    if (!tokens) throw new Error(`${TOKENS} has no ${level} level.`);
    expect(tooFaint(tokens, pairsOf(level))).toEqual([]);
  });
});

/** The two colours that a browser shows before it has read a sheet; neither can name a token. */
const FIRST_PAINT = /(?:<meta name="theme-color" content=|<body bgcolor=)"(#[0-9a-f]{6})"/g;

function withoutFirstPaint(path: string, text: string): string {
  return path === 'client/index.html' ? text.replace(FIRST_PAINT, '') : text;
}

describe('the checks on colours', () => {
  it('compute the published ratios', () => {
    // *From memory*: #767676 is the lightest grey that reaches 4.5 on white; amber on black.
    expect(contrast('#767676', '#FFFFFF')).toBeCloseTo(4.54, 2);
    expect(contrast('#FFB000', '#000000')).toBeCloseTo(11.46, 2);
    // WCAG 2.2, "contrast ratio": ranges from 1 to 21.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
    expect(contrast('#123456', '#123456')).toBe(1);
    expect(() => contrast('black', '#ffffff')).toThrow('#rrggbb');
  });

  it('would notice a colour that is too faint, or missing', () => {
    const tokens = tokensByLevel(
      ':root { --a: #000000; --b: #777777; } :root[data-light="dim"] { --b: #aaaaaa; }',
    );
    expect(tooFaint(tokens.get('normal') ?? new Map(), [['--b', '--a', 7]])).toHaveLength(1);
    expect(tooFaint(tokens.get('dim') ?? new Map(), [['--b', '--a', 7]])).toEqual([]);
    expect(tooFaint(tokens.get('dim') ?? new Map(), [['--c', '--a', 7]])).toHaveLength(1);
  });

  it('would notice a colour outside the tokens, and nothing else', () => {
    const css = [
      '.red { color: #abc; }',
      '.a { border: 1px solid red; }',
      '.a { color: RGB(1 2 3); }',
      '.a { fill: hsla(1, 2%, 3%, 0.5); }',
      '@media (x) { .a:hover { background: #00000080 } }',
    ];
    expect(css.filter((text) => colourLiterals('a.css', text).length !== 1)).toEqual([]);
    const code = [
      "const a = '#ff0000';",
      '<path fill="white" />;',
      "const b = { stroke: 'black' };",
      'const c = `rgb(1,2,3)`;',
    ];
    expect(code.filter((text) => colourLiterals('a.tsx', text).length !== 1)).toEqual([]);
    const clean =
      '.tan #add { color: var(--red); /* #fff */ border: 1px solid currentColor; white-space: nowrap; }';
    expect(colourLiterals('a.css', clean)).toEqual([]);
    expect(colourLiterals('a.tsx', "// #fff\nconst a = '#key'; const red = `black box`;")).toEqual([]);
    expect(colourLiterals('a.html', '<p bgcolor="#112233"><!-- #fff -->')).toHaveLength(1);
  });
});
