import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Device, Store } from '../../server/store/store.ts';
import { asId, type NightId, type PersonId, type VenueId } from '../../shared/ids.ts';

const id = (text: string) => asId<NightId>(text);
const record = (name: string, madeAt = 1) => ({ id: id(name), title: `Night ${name}`, madeAt });
const bytes = (...values: number[]) => Uint8Array.from(values);

const device: Device = {
  night: id('a'),
  role: 'lead',
  person: asId<PersonId>('p1'),
  name: 'Noor',
  pairedAt: 12,
};

const hall = { id: asId<VenueId>('hall'), name: 'Hall', savedAt: 5, featureCount: 2, removedAt: null };

/** What every store has to do, whatever it is made of. `open` gives an empty one. */
export function storeContract(open: () => Promise<Store>): void {
  test('an empty store has no nights, no phones, and no updates of a night that there is not', async () => {
    const store = await open();
    expect(await store.listNights()).toEqual([]);
    expect([...(await store.listDevices())]).toEqual([]);
    expect(await store.loadNight(id('nowhere'))).toEqual({ updates: [], damaged: 0 });
    expect(store.where).not.toBe('');
  });

  test('a night comes back with its record and its first update', async () => {
    const store = await open();
    await store.createNight(record('a'), bytes(1, 2, 3));
    expect(await store.listNights()).toEqual([record('a')]);
    expect(await store.loadNight(id('a'))).toEqual({ updates: [bytes(1, 2, 3)], damaged: 0 });
  });

  test('a second night of the same id is refused, and the first stays as it was', async () => {
    const store = await open();
    await store.createNight(record('a'), bytes(1));
    await expect(store.createNight(record('a', 2), bytes(2))).rejects.toThrow('a');
    expect(await store.listNights()).toEqual([record('a')]);
    expect((await store.loadNight(id('a'))).updates).toEqual([bytes(1)]);
  });

  test('updates come back as they were, in the order of the calls, whether or not each was waited for', async () => {
    const update = fc.uint8Array({ minLength: 1, maxLength: 300 });
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(update, fc.boolean()), { maxLength: 30 }), async (steps) => {
        const store = await open();
        await store.createNight(record('a'), bytes(9));
        const writes: Promise<void>[] = [];
        for (const [next, wait] of steps) {
          const write = store.append(id('a'), next);
          writes.push(write);
          if (wait) await write;
        }
        await Promise.all(writes);
        const expected = [bytes(9), ...steps.map(([next]) => Uint8Array.from(next))];
        const { updates } = await store.loadNight(id('a'));
        expect(updates.map((found) => Uint8Array.from(found))).toEqual(expected);
        await store.close();
      }),
      { numRuns: 15 },
    );
  });

  test('promises of appends end in the order of the calls', async () => {
    const store = await open();
    await store.createNight(record('a'), bytes(1));
    const ended: number[] = [];
    await Promise.all(
      [...Array(20).keys()].map((number) =>
        store.append(id('a'), bytes(number)).then(() => ended.push(number)),
      ),
    );
    expect(ended).toEqual([...Array(20).keys()]);
  });

  test('nights keep apart, also where the id of one begins with that of another', async () => {
    const store = await open();
    for (const name of ['a', 'aa', 'a-', 'a0', 'b']) {
      await store.createNight(record(name), bytes(name.length));
      await store.append(id(name), new TextEncoder().encode(name));
    }
    await store.compact(id('a'), bytes(77));
    expect((await store.loadNight(id('a'))).updates).toEqual([bytes(77)]);
    for (const name of ['aa', 'a-', 'a0', 'b'])
      expect((await store.loadNight(id(name))).updates).toEqual([
        bytes(name.length),
        new TextEncoder().encode(name),
      ]);
    expect((await store.listNights()).map((night) => night.id).sort()).toEqual(['a', 'a-', 'a0', 'aa', 'b']);
  });

  test('an append to a night that there is not fails', async () => {
    const store = await open();
    await expect(store.append(id('nowhere'), bytes(1))).rejects.toThrow('nowhere');
    await expect(store.compact(id('nowhere'), bytes(1))).rejects.toThrow('nowhere');
  });

  test('what is appended after putting together follows it', async () => {
    const store = await open();
    await store.createNight(record('a'), bytes(1));
    for (const number of [2, 3, 4]) await store.append(id('a'), bytes(number));
    await store.compact(id('a'), bytes(1, 2, 3, 4));
    await store.append(id('a'), bytes(5));
    expect((await store.loadNight(id('a'))).updates).toEqual([bytes(1, 2, 3, 4), bytes(5)]);
  });

  test('a venue comes back with its text, and another record leaves the text as it was', async () => {
    const store = await open();
    expect(await store.listVenues()).toEqual([]);
    expect(await store.loadVenue(hall.id)).toBeNull();
    const text = JSON.stringify({ name: 'Höfe “1”', features: {} });
    await store.putVenue(hall, text);
    await store.putVenue({ ...hall, id: asId<VenueId>('hall-'), name: 'Another' }, '{}');
    await store.putVenue({ ...hall, name: 'Old hall', removedAt: 9 });
    expect(await store.loadVenue(hall.id)).toBe(text);
    const records = [...(await store.listVenues())].sort((a, b) => (a.id < b.id ? -1 : 1));
    expect(records).toEqual([
      { ...hall, name: 'Old hall', removedAt: 9 },
      { ...hall, id: 'hall-', name: 'Another' },
    ]);
    expect(await store.listNights(), 'nights and phones are kept apart from venues').toEqual([]);
    expect([...(await store.listDevices())]).toEqual([]);
  });

  test('paired phones are kept by the hash of their token until they are taken out', async () => {
    const store = await open();
    await store.putDevice('hash1', device);
    await store.putDevice('hash2', { ...device, role: 'assistant', name: 'Émile / 2' });
    await store.putDevice('hash1', { ...device, name: 'Noor again' });
    expect(await store.listDevices()).toEqual(
      new Map([
        ['hash1', { ...device, name: 'Noor again' }],
        ['hash2', { ...device, role: 'assistant', name: 'Émile / 2' }],
      ]),
    );
    await store.deleteDevice('hash1');
    await store.deleteDevice('never there');
    expect([...(await store.listDevices()).keys()]).toEqual(['hash2']);
  });

  test('closing waits for what is being written', async () => {
    const store = await open();
    await store.createNight(record('a'), bytes(1));
    let written = false;
    const write = store.append(id('a'), bytes(2)).then(() => {
      written = true;
    });
    await store.close();
    await write;
    expect(written).toBe(true);
  });
}
