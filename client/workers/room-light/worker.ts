import type { FromRoomLight, Port } from './messages.ts';
import { serveRoomLight } from './serve.ts';

// In a worker the global object is the port; the compiler knows this file as part of the page.
serveRoomLight(globalThis as unknown as Port<FromRoomLight>);
