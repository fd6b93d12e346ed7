import { DEAD_AFTER_MS, OPENING_LIMIT_MS, PROBE_EVERY_MS } from '../../client/session/watchdog.ts';
import { REFLECTED_K } from '../../core/light/exposure.ts';
import { INVITE_MS, LEAD_CODE_MS } from '../../server/access/secrets.ts';
import { DEFAULT_PORT } from '../../server/config.ts';
import { RING_AGAIN_MS } from '../../server/signals/heads-up-desk.ts';
import { CLASH_WITHIN_MS } from '../../shared/document/announcement.ts';
import { DEFAULT_FINISHES } from '../../shared/document/defaults.ts';
import { OVERDUE_AFTER_MIN } from '../../shared/document/running.ts';
import { CLOSE_REASONS } from '../../shared/messages/close-reasons.ts';
import { BEAT_MS } from '../../shared/messages/signals.ts';
import { LARGEST_SIGNAL_BYTES, LARGEST_SYNC_BYTES } from '../../shared/messages/sync-codes.ts';
import { LIVE_MS, WEAK_MS } from '../../shared/presence/link.ts';
import { MOST_VENUE_BYTES } from '../../shared/venue/venue-file.ts';
import type { Quantity } from './rules-figures.ts';
import { textOf } from './rules-tree.ts';

/** What a figure in the documents is tied to: the words beside it, and the number that the code has. */
export type Tie = {
  readonly near: RegExp;
  /** Where the number lives, for the message */
  readonly from: string;
  readonly is: () => Quantity;
  /** The document promises at least this much, and the code may do better */
  readonly atLeast?: true;
};

const seconds = (milliseconds: number): Quantity => ({ value: milliseconds / 1000, unit: 's' });
const bare = (value: number): Quantity => ({ value, unit: '' });

/** A number that a file keeps to itself: the first group of the pattern, underscores dropped. */
function numberIn(path: string, pattern: RegExp): number {
  const digits = pattern.exec(textOf(path))?.[1];
  if (digits === undefined) throw new Error(`${path} no longer holds ${pattern}.`);
  return Number(digits.replaceAll('_', ''));
}

function constant(near: RegExp, path: string, name: string, quantity: (value: number) => Quantity): Tie {
  return {
    near,
    from: `${name} of ${path}`,
    is: () => quantity(numberIn(path, new RegExp(`\\b${name} = ([\\d_.]+)`))),
  };
}

function closeCode(near: RegExp, code: number): Tie {
  return { near, from: 'CLOSE_REASONS of shared/messages/close-reasons.ts', is: () => bare(code) };
}

/** A size of type on the carry card, in the sheet of the assistant's face; 1 rem is 16 px as a phone comes. */
function typeSize(near: RegExp, rule: string): Tie {
  const path = 'client/screens/assistant/card.css';
  const pattern = new RegExp(`\\${rule} \\{[^}]*font-size: ([\\d.]+)rem`);
  return {
    near,
    from: `${rule} of ${path}`,
    is: () => ({ value: numberIn(path, pattern) * 16, unit: 'px' }),
  };
}

/** A size that the browser tests open a phone in. */
function phoneSize(width: number, height: number): Tie {
  const pattern = new RegExp(`width: (${width}), height: ${height}\\b`);
  const path = 'tests/e2e/support/clean.ts';
  return { near: /./, from: path, is: () => ({ value: numberIn(path, pattern), unit: `× ${height}` }) };
}

const SPAN = Math.floor(CLOSE_REASONS.garbage / 100) * 100;

/** Every figure that README, DEVELOPERS, SPEC and NOMENCLATURE may state, and the code that it comes from. */
export const TIES: readonly Tie[] = [
  { near: /\bbeats?\b/i, from: 'BEAT_MS of shared/messages/signals.ts', is: () => seconds(BEAT_MS) },
  { near: /\blive\b/i, from: 'LIVE_MS of shared/presence/link.ts', is: () => seconds(LIVE_MS) },
  { near: /\bweak\b/i, from: 'WEAK_MS of shared/presence/link.ts', is: () => seconds(WEAK_MS) },
  { near: /\blost\b/i, from: 'WEAK_MS of shared/presence/link.ts', is: () => seconds(WEAK_MS) },
  {
    near: /hears? nothing|silen|watchdog/i,
    from: 'DEAD_AFTER_MS of client/session/watchdog.ts',
    is: () => seconds(DEAD_AFTER_MS),
  },
  {
    near: /opening/i,
    from: 'OPENING_LIMIT_MS of client/session/watchdog.ts',
    is: () => seconds(OPENING_LIMIT_MS),
  },
  {
    near: /heartbeat/i,
    from: 'PROBE_EVERY_MS of client/session/watchdog.ts',
    is: () => seconds(PROBE_EVERY_MS),
  },
  {
    near: /invit|assistant's (?:code|QR)/i,
    from: 'INVITE_MS of server/access/secrets.ts',
    is: () => seconds(INVITE_MS),
  },
  {
    near: /\blead|\bcode\b/i,
    from: 'LEAD_CODE_MS of server/access/secrets.ts',
    is: () => seconds(LEAD_CODE_MS),
  },
  {
    near: /again|rings?\b|heads-up/i,
    from: 'RING_AGAIN_MS of server/signals/heads-up-desk.ts',
    is: () => seconds(RING_AGAIN_MS),
  },
  constant(/wait|held|hold/i, 'client/session/hold-stale.ts', 'STALE_MS', seconds),
  constant(/probe|clock/i, 'client/session/signals-link.ts', 'PROBES', (value) => ({
    value,
    unit: 'probes',
  })),
  constant(/token|cookie|device|paired/i, 'server/access/cookies.ts', 'COOKIE_DAYS', (days) =>
    seconds(days * 86_400_000),
  ),
  {
    near: /port|http|address|laptop/i,
    from: 'DEFAULT_PORT of server/config.ts',
    is: () => bare(DEFAULT_PORT),
  },
  constant(/port/i, 'server/config.ts', 'HIGHEST_PORT', bare),
  {
    near: /sync|message|large/i,
    from: 'LARGEST_SYNC_BYTES of shared/messages/sync-codes.ts',
    is: () => ({ value: LARGEST_SYNC_BYTES, unit: 'bytes' }),
  },
  {
    near: /signal|message|large/i,
    from: 'LARGEST_SIGNAL_BYTES of shared/messages/sync-codes.ts',
    is: () => ({ value: LARGEST_SIGNAL_BYTES, unit: 'bytes' }),
  },
  closeCode(/between|from/i, SPAN),
  closeCode(/between|and|to/i, SPAN + 99),
  closeCode(/no valid|garbage|malformed/i, CLOSE_REASONS.garbage),
  closeCode(/unpaired/i, CLOSE_REASONS.unpaired),
  closeCode(/not allowed|looker/i, CLOSE_REASONS['not-allowed']),
  closeCode(/no such night|unknown night/i, CLOSE_REASONS['no-such-night']),
  closeCode(/version/i, CLOSE_REASONS['other-version']),
  closeCode(/large/i, CLOSE_REASONS['too-large']),
  closeCode(/flood|many/i, CLOSE_REASONS['too-many']),
  {
    near: /secret/i,
    from: 'makeId of shared/ids.ts',
    // That many signs, each drawn from 33.
    is: () => ({ value: numberIn('shared/ids.ts', /id\.length < (\d+)/) * Math.log2(33), unit: 'bits' }),
    atLeast: true,
  },
  {
    near: /token/i,
    from: 'TOKEN_BYTES of server/access/devices.ts',
    is: () => ({ value: numberIn('server/access/devices.ts', /TOKEN_BYTES = (\d+)/) * 8, unit: 'bits' }),
    atLeast: true,
  },
  {
    near: /control|key|press/i,
    from: '--key of client/style/tokens.css',
    is: () => ({ value: numberIn('client/style/tokens.css', /--key: (\d+)px/), unit: 'px' }),
  },
  {
    near: /control|key|press/i,
    from: '--main-key of client/style/tokens.css',
    is: () => ({ value: numberIn('client/style/tokens.css', /--main-key: (\d+)px/), unit: 'px' }),
  },
  {
    near: /to either/i,
    from: 'WEDGE_HALF_DEG of client/parts/direction/index.tsx',
    is: () => ({
      value: numberIn('client/parts/direction/index.tsx', /WEDGE_HALF_DEG = (\d+)/),
      unit: '°',
    }),
  },
  {
    near: /switched off/i,
    from: 'TRUSTED_MS of client/device/turn-sense.ts',
    is: () => seconds(numberIn('client/device/turn-sense.ts', /TRUSTED_MS = ([\d_]+)/)),
  },
  phoneSize(390, 844),
  phoneSize(844, 390),
  {
    near: /wide/i,
    from: 'tests/e2e/support/clean.ts',
    is: () => ({ value: numberIn('tests/e2e/support/clean.ts', /width: (320)\b/), unit: 'px' }),
  },
  {
    near: /overdue|passed more than/i,
    from: 'OVERDUE_AFTER_MIN of shared/document/running.ts',
    is: () => ({ value: OVERDUE_AFTER_MIN * 60, unit: 's' }),
  },
  {
    near: /announcements/i,
    from: 'CLASH_WITHIN_MS of shared/document/announcement.ts',
    is: () => seconds(CLASH_WITHIN_MS),
  },
  {
    near: /finishes/i,
    from: 'DEFAULT_FINISHES of shared/document/defaults.ts',
    is: () => ({ value: 100 * DEFAULT_FINISHES.floor, unit: '%' }),
  },
  { near: /reflected/i, from: 'REFLECTED_K of core/light/exposure.ts', is: () => bare(REFLECTED_K) },
  constant(/APEX/, 'core/light/exposure.ts', 'APEX_SPEED_CONSTANT', bare),
  {
    near: /nudge|corrects/i,
    from: 'SIZES of client/screens/lead/nudge-panel.tsx',
    is: () => ({
      value: numberIn('client/screens/lead/nudge-panel.tsx', /\['10 cm', ([\d.]+)\]/),
      unit: 'm',
    }),
  },
  constant(/nudge/i, 'shared/document/commands/nudge-carry.ts', 'FOLDS_WITHIN_MS', seconds),
  {
    near: /file|venue/i,
    from: 'MOST_VENUE_BYTES of shared/venue/venue-file.ts',
    is: () => ({ value: MOST_VENUE_BYTES, unit: 'bytes' }),
  },
  typeSize(/sentence|instruction/i, '.sentence'),
  typeSize(/arrow|number|distance/i, '.distance b'),
  {
    near: /lines of code/i,
    from: 'tests/rules/sizes.test.ts',
    is: () => ({ value: numberIn('tests/rules/sizes.test.ts', /MOST_LINES = (\d+)/), unit: 'lines' }),
  },
  constant(/GRAVITY/, 'core/cautions/tipping.ts', 'GRAVITY', bare),
  ...['>=(20\\.\\d+)', '>=(22\\.\\d+)'].map((pattern): Tie => {
    const range = new RegExp(`"node": "[^"]*${pattern}`);
    return {
      near: /Node/i,
      from: 'engines of package.json',
      is: () => bare(numberIn('package.json', range)),
    };
  }),
];
