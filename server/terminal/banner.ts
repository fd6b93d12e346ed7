import type { Address } from '../network/addresses.ts';
import { pairLink } from '../network/links.ts';
import type { NightRecord } from '../store/store.ts';
import { terminalQr } from './qr.ts';

/** Where this machine is reached: one line for each address, the likeliest first, this machine itself last. */
function hostLines(addresses: readonly Address[], port: number): { host: string; card: string }[] {
  return [
    ...addresses.map(({ ip, card }) => ({ host: `${ip}:${port}`, card })),
    { host: `localhost:${port}`, card: 'this machine only' },
  ];
}

/** What the server says when it has started. */
export function startText(facts: {
  addresses: readonly Address[];
  port: number;
  nights: readonly NightRecord[];
  where: string;
  logFile: string;
}): string {
  const hosts = hostLines(facts.addresses, facts.port);
  const lines = ['', 'Hushmark is running. Phones on the same network reach it at', ''];
  for (const { host, card } of hosts) lines.push(`  http://${host}  (${card})`);
  if (facts.addresses.length === 0)
    lines.push('', 'This machine is on no network: switch the hotspot on and start again.');
  lines.push('', 'Nights, the newest first:', '');
  for (const { id, title } of facts.nights) lines.push(`  ${title}  (${id})`);
  lines.push('', `They are stored in ${facts.where}`, `Log: ${facts.logFile}`, '');
  return lines.join('\n');
}

/** A lead code: a QR code for the likeliest address, and its link for every one. It pairs one phone, once. */
export function leadCodeText(facts: {
  night: NightRecord;
  secret: string;
  addresses: readonly Address[];
  port: number;
}): string {
  const links = hostLines(facts.addresses, facts.port).map(({ host, card }) => ({
    link: pairLink(host, facts.secret),
    card,
  }));
  return [
    `Lead of "${facts.night.title}": scan this with the lead's phone. It works once, for 12 hours.`,
    '',
    terminalQr(links[0]?.link ?? ''),
    '',
    'The same code as a link:',
    '',
    ...links.map(({ link, card }) => `  ${link}  (${card})`),
    '',
    'The lead invites the assistant from the phone. Press Enter for a fresh lead code, Ctrl-C to stop.',
    '',
  ].join('\n');
}

/** Somebody joined: who, and as what. A name comes from a phone: signs that steer a terminal are taken out. */
export const joinedText = (role: string, name: string): string =>
  `${role} joined: ${name.replace(/\p{C}/gu, '')}`;
