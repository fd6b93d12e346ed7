import { join } from 'node:path';
import { helpText, readConfig } from './config.ts';
import { createServer } from './create-server.ts';
import { createLog } from './logging.ts';
import { machineAddresses } from './network/addresses.ts';
import { demoNight } from './nights/demo-night.ts';
import { StartFailure } from './start-failure.ts';
import { stopOnSignal } from './stopping.ts';
import { openLevelStore } from './store/level-store.ts';
import { joinedText, leadCodeText, startText } from './terminal/banner.ts';
import { onEnter } from './terminal/on-enter.ts';

const CLIENT_DIRECTORY = join(import.meta.dirname, '..', '.build', 'client');
const say = (text: string) => process.stdout.write(`${text}\n`);

/** The date where this machine is: a reception that starts at ten in the evening is of this day everywhere. */
function today(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

async function main(): Promise<void> {
  const config = readConfig(process.argv.slice(2), process.env);
  if (config.help) return void say(helpText());
  const store = await openLevelStore(config.dataDirectory);
  const log = createLog(config.dataDirectory, config.log);
  const server = await createServer({
    port: config.port,
    store,
    log,
    clientDirectory: CLIENT_DIRECTORY,
    firstNight: demoNight(today()),
    onPaired: ({ role, name }) => say(joinedText(role, name)),
  });
  stopOnSignal(() => server.close());
  if (config.newNight !== null) await server.makeNight({ ...demoNight(today()), title: config.newNight });
  const nights = server.nights();
  const night = config.night === null ? nights[0] : nights.find(({ id }) => id === config.night);
  if (!night) {
    await server.close();
    throw new StartFailure(`There is no night ${config.night ?? ''} in ${store.where}.`);
  }
  const logFile = join(config.dataDirectory, 'hushmark.log');
  const { port } = server;
  say(startText({ addresses: machineAddresses(), port, nights, where: store.where, logFile }));
  const showLeadCode = () =>
    say(leadCodeText({ night, secret: server.mint(night.id, 'lead'), addresses: machineAddresses(), port }));
  showLeadCode();
  onEnter(process.stdin, showLeadCode);
}

main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof StartFailure ? error.message : (error as Error).stack}\n`);
  process.exit(1);
});
