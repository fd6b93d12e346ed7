import { afterEach, describe, expect, it, vi } from 'vitest';
import type { FromRoomLight, Port, ToRoomLight } from '../../client/workers/room-light/messages.ts';
import { openRoomLight } from '../../client/workers/room-light/room-light-link.ts';
import { serveRoomLight } from '../../client/workers/room-light/serve.ts';
import type { LightInput } from '../../core/light/report/light-input.ts';
import { INPUT, ROOM, unit } from '../core/report/report-scene.ts';

/** Both ends of a real message channel; what goes from one to the other is copied, as to a worker. */
const open: MessageChannel[] = [];
function channel() {
  const { port1, port2 } = new MessageChannel();
  open.push({ port1, port2 } as MessageChannel);
  const heard: FromRoomLight[] = [];
  serveRoomLight(port2 as unknown as Port<FromRoomLight>);
  const link = openRoomLight(port1 as unknown as Port<ToRoomLight>);
  const onLink = port1.onmessage;
  port1.onmessage = (event) => {
    heard.push(event.data as FromRoomLight);
    onLink?.call(port1, event);
  };
  return { link, heard, page: port1 };
}

afterEach(() => {
  for (const { port1, port2 } of open.splice(0)) {
    port1.close();
    port2.close();
  }
});

const SMALL = { ...ROOM, ceilingM: 2.6 };
const at = (x: number): LightInput => ({ ...INPUT, units: [unit('key', { x, y: 6 })] });

describe('the room’s light beside the page', () => {
  it('[LEAD8] tells how far it is, then answers what was asked meanwhile', async () => {
    const { link, heard } = channel();
    link.ask(at(8));
    link.setRoom(SMALL);
    await vi.waitFor(() => expect(link.lit.value).not.toBeNull(), { timeout: 20_000 });
    const parts = heard.flatMap((message) => (message.kind === 'progress' ? [message.part] : []));
    expect(parts.length).toBeGreaterThan(5);
    expect(parts).toEqual([...parts].sort((a, b) => a - b));
    expect(parts.every((part) => part >= 0 && part <= 1)).toBe(true);
    expect(link.readiness.value).toEqual({ kind: 'ready' });
    expect(link.lit.value?.report.units[0]?.id).toBe('key');
    expect(link.lit.value?.lines.length).toBeGreaterThan(0);
  }, 30_000);

  it('[LEAD8] answers the first and the last of many questions, and none of those in between', async () => {
    const { link, heard } = channel();
    link.setRoom(SMALL);
    for (let step = 0; step < 20; step++) link.ask(at(7 + step * 0.1));
    await vi.waitFor(() => expect(heard.filter(({ kind }) => kind === 'lit')).toHaveLength(2), {
      timeout: 20_000,
    });
    const report = link.lit.value?.report;
    const last = at(7 + 19 * 0.1);
    link.ask(last);
    await vi.waitFor(() => expect(heard.filter(({ kind }) => kind === 'lit')).toHaveLength(3), {
      timeout: 20_000,
    });
    expect(report).toEqual(link.lit.value?.report);
  }, 30_000);

  it('[LEAD8] keeps the last good answer when a light is where none can be, and says why', async () => {
    const { link } = channel();
    link.setRoom(SMALL);
    link.ask(at(8));
    await vi.waitFor(() => expect(link.lit.value).not.toBeNull(), { timeout: 20_000 });
    const good = link.lit.value;
    link.ask(at(40));
    await vi.waitFor(() => expect(link.trouble.value).toMatch(/outside the room/));
    expect(link.lit.value).toBe(good);
    link.ask(at(8.5));
    await vi.waitFor(() => expect(link.trouble.value).toBeNull());
    expect(link.lit.value).not.toBe(good);
  }, 30_000);

  it('[LEAD8] keeps the room of before when the new one is impossible', async () => {
    const { link } = channel();
    link.setRoom(SMALL);
    link.ask(at(8));
    await vi.waitFor(() => expect(link.lit.value).not.toBeNull(), { timeout: 20_000 });
    const [a, b, c] = ROOM.outline;
    const crossed = [a, c, b, { x: 1, y: 7 }].filter((corner) => corner !== undefined);
    link.setRoom({ ...SMALL, outline: crossed });
    await vi.waitFor(() => expect(link.trouble.value).toMatch(/crosses itself/));
    expect(link.readiness.value).toEqual({ kind: 'ready' });
    const good = link.lit.value;
    link.ask(at(8.2));
    await vi.waitFor(() => expect(link.lit.value).not.toBe(good));
    // An answer about the light does not make the room possible.
    expect(link.trouble.value).toMatch(/crosses itself/);
    link.setRoom(SMALL);
    expect(link.trouble.value).toBeNull();
  }, 30_000);

  it('[LEAD8] answers anew when the room has changed, without being asked again', async () => {
    const { link } = channel();
    link.setRoom(SMALL);
    link.ask(at(8));
    await vi.waitFor(() => expect(link.lit.value).not.toBeNull(), { timeout: 20_000 });
    const bright = link.lit.value?.report.units[0]?.returnedLuxSeconds ?? Number.NaN;
    link.setRoom({ ...SMALL, finishes: { ceiling: 0, walls: 0, floor: 0 } });
    await vi.waitFor(
      () => expect(link.lit.value?.report.units[0]?.returnedLuxSeconds).toBeLessThan(bright / 10),
      { timeout: 20_000 },
    );
  }, 30_000);

  it('[LEAD8] drops a room that is half done when another comes', async () => {
    const { link, heard } = channel();
    link.setRoom(ROOM);
    await vi.waitFor(() => expect(heard.some(({ kind }) => kind === 'progress')).toBe(true));
    link.setRoom(SMALL);
    link.ask(at(8));
    await vi.waitFor(() => expect(link.lit.value).not.toBeNull(), { timeout: 20_000 });
    expect(heard.filter(({ kind }) => kind === 'ready')).toHaveLength(1);
  }, 30_000);
});
