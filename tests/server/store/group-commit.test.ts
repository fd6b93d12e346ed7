import { expect, test } from 'vitest';
import { GroupCommit } from '../../../server/store/group-commit.ts';

/** A disk that writes one batch at a time, when the test says so. */
function heldDisk() {
  const batches: number[][] = [];
  const ends: { done: () => void; fail: (error: Error) => void }[] = [];
  const commit = new GroupCommit<number>((operations) => {
    batches.push([...operations]);
    return new Promise<void>((done, fail) => ends.push({ done, fail }));
  });
  return { batches, ends, commit };
}

test('the first write starts at once; what comes while it is on its way goes together in the next', async () => {
  const { batches, ends, commit } = heldDisk();
  const first = commit.add([1]);
  expect(batches).toEqual([[1]]);
  const others = [commit.add([2]), commit.add([3, 4]), commit.add([5])];
  expect(batches).toEqual([[1]]);
  ends[0]?.done();
  await first;
  expect(batches).toEqual([[1], [2, 3, 4, 5]]);
  ends[1]?.done();
  await Promise.all(others);
  await commit.settled();
});

test('a write that fails fails those in it, and the next goes on', async () => {
  const { batches, ends, commit } = heldDisk();
  const first = commit.add([1]);
  const second = commit.add([2]);
  ends[0]?.fail(new Error('full'));
  await expect(first).rejects.toThrow('full');
  expect(batches).toEqual([[1], [2]]);
  ends[1]?.done();
  await second;
});
