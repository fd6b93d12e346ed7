import { describe, expect, it } from 'vitest';
import { readNight } from '../../shared/document/snapshot.ts';
import { callKey, carryOf, markAt, phonePair } from '../support/document-night.ts';
import { valuesOf } from '../support/document-values.ts';

describe('the network that the tests hold', () => {
  it('[DOC12] loses what was on its way when it is cut, and the state vectors bring it back at the next join', () => {
    const { network, lead, assistant } = phonePair();
    const on = callKey(lead.doc, lead.hand);
    expect(lead.phone.up).toHaveLength(1);
    network.cut(lead.phone);
    expect(lead.phone.up).toHaveLength(0);
    network.drain();
    expect(readNight(assistant.doc).carries).toEqual([]);
    network.join(lead.phone);
    network.drain();
    expect(carryOf(assistant.doc, on).state).toBe('called');
    expect(valuesOf(assistant.doc)).toEqual(valuesOf(lead.doc));
  });

  it('[DOC12] what a phone writes between joining and its answer waits at the server and is not lost', () => {
    const { network, lead, assistant } = phonePair();
    network.cut(lead.phone);
    callKey(lead.doc, lead.hand, markAt(8, 8));
    network.join(lead.phone);
    const on = callKey(lead.doc, lead.hand, markAt(9, 6));
    network.deliver(lead.phone, 'up'); // its question
    network.deliver(lead.phone, 'up'); // the second call, before the first
    expect(network.server.store.pendingStructs).not.toBeNull();
    network.drain();
    expect(network.server.store.pendingStructs).toBeNull();
    expect(carryOf(assistant.doc, on).current).toMatchObject({ number: 2, mark: markAt(9, 6) });
  });
});
