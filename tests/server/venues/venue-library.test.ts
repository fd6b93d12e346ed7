import { expect, onTestFinished, test } from 'vitest';
import { openLevelStore } from '../../../server/store/level-store.ts';
import { createMemoryStore } from '../../../server/store/memory-store.ts';
import { MOST_VENUES, VenueLibrary } from '../../../server/venues/venue-library.ts';
import { ownFolder } from '../../support/server-folder.ts';
import { demoVenue, venueId } from '../../support/server-venues.ts';

const namesOf = (library: VenueLibrary) => library.list().map(({ name }) => name);

test('[VEN3] what was saved, renamed and removed is so when the server starts again', async () => {
  const folder = ownFolder();
  const first = await openLevelStore(folder);
  const library = await VenueLibrary.load(first);
  await library.save(venueId('mill'), demoVenue('Mill'));
  await library.save(venueId('barn'), demoVenue('Barn', 2));
  await library.rename(venueId('mill'), 'The old mill');
  await library.remove(venueId('barn'), 77);
  await first.close();

  const second = await openLevelStore(folder);
  onTestFinished(() => second.close());
  const again = await VenueLibrary.load(second);
  expect(again.list()).toEqual(library.list());
  expect(again.list()).toMatchObject([
    { id: 'barn', name: 'Barn', savedAt: 2, featureCount: 13, removedAt: 77 },
    { id: 'mill', name: 'The old mill', removedAt: null },
  ]);
  expect(await again.read(venueId('mill'))).toEqual(demoVenue('The old mill'));
  expect(await again.read(venueId('barn'))).toBeNull();
  await again.restore(venueId('barn'));
  expect(await again.read(venueId('barn'))).toEqual(demoVenue('Barn', 2));
});

test('[VEN3] saving twice under one id keeps one, the later; saving a removed one brings it back', async () => {
  const library = await VenueLibrary.load(createMemoryStore());
  await Promise.all([
    library.save(venueId('mill'), demoVenue('Mill', 1)),
    library.save(venueId('mill'), demoVenue('Mill again', 2)),
  ]);
  expect(namesOf(library)).toEqual(['Mill again']);
  await library.remove(venueId('mill'), 5);
  await library.save(venueId('mill'), demoVenue('Mill', 3));
  expect(library.list()).toMatchObject([{ name: 'Mill', savedAt: 3, removedAt: null }]);
});

test('[VEN3] a rename and a removal at once both count', async () => {
  const library = await VenueLibrary.load(createMemoryStore());
  await library.save(venueId('mill'), demoVenue('Mill'));
  await Promise.all([library.rename(venueId('mill'), 'Old mill'), library.remove(venueId('mill'), 5)]);
  expect(library.list()).toMatchObject([{ name: 'Old mill', removedAt: 5 }]);
  expect(await library.rename(venueId('mill'), 'Older mill'), 'it was removed').toBeNull();
  expect(await library.remove(venueId('mill'), 9)).toMatchObject({ removedAt: 5 });
});

test('what is not there is neither read nor changed', async () => {
  const library = await VenueLibrary.load(createMemoryStore());
  const nowhere = venueId('nowhere');
  expect(await library.read(nowhere)).toBeNull();
  expect(await library.rename(nowhere, 'x')).toBeNull();
  expect(await library.remove(nowhere, 1)).toBeNull();
  expect(await library.restore(nowhere)).toBeNull();
});

test('[VEN3] a venue that the disk refused is not in the library, and the next change works', async () => {
  const inner = createMemoryStore();
  let full = true;
  const store = {
    ...inner,
    putVenue: (...put: Parameters<typeof inner.putVenue>) =>
      full ? Promise.reject(new Error('no space left on device')) : inner.putVenue(...put),
  };
  const library = await VenueLibrary.load(store);
  await expect(library.save(venueId('mill'), demoVenue())).rejects.toThrow('no space');
  expect(library.list()).toEqual([]);
  full = false;
  await library.save(venueId('mill'), demoVenue());
  expect(namesOf(library)).toEqual(['The old mill']);
});

test('a full library takes no new venue, and still takes a known one', async () => {
  const library = await VenueLibrary.load(createMemoryStore());
  const small = { ...demoVenue(), features: {} };
  for (let at = 0; at < MOST_VENUES; at += 1) await library.save(venueId(`v${at}`), small);
  expect(await library.save(venueId('one-more'), small)).toBeNull();
  expect(await library.save(venueId('v7'), { ...small, name: 'Seven' })).toMatchObject({ name: 'Seven' });
  expect(library.list()).toHaveLength(MOST_VENUES);
});
