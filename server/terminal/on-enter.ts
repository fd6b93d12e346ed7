import { createInterface } from 'node:readline';

/** Calls `act` for every line typed; without a terminal as well. Gives back the way to stop listening. */
export function onEnter(input: NodeJS.ReadableStream, act: () => void): () => void {
  const lines = createInterface({ input, terminal: false });
  lines.on('line', act);
  return () => lines.close();
}
