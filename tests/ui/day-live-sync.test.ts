import { afterEach, describe, expect, test, vi } from 'vitest';
import { rowKey, type DayEvent, type RowRef } from '#lib/shoot/day-log';
import { foldDay } from '#lib/shoot/fold-day';
import { connectionWords, lossWords } from '../../app/_sync/connection-words';
import { DAY_LOG, type DayState } from '../../app/episodes/[id]/day/live/_log/day-sync';
import { BATCH, startSync, type DeviceSync } from '../../app/_sync/device-sync';
import { memoryStore } from '../../app/_sync/memory-store';
import { openStore } from '../../app/_sync/open-store';
import { readAnswer } from '../../app/_sync/polling-transport';
import { ShutOut, type Listener, type Transport } from '../../app/_sync/transport';
import type { WaitingStore } from '../../app/_sync/waiting-store';

const DAY = { address: '/episodes/e/day/events', logId: 'd' };
const NOTHING = { cursor: 1, whole: true, events: [], gone: [] };
const MIX = { stepId: 'mix' };
const note = (text: string, refs: RowRef | Record<string, never> = {}) =>
  ({ kind: 'note', refs, payload: { text } }) as const;

/** A server that keeps each entry once, behind a network that may be cut before or after it. */
function server() {
  const kept: DayEvent[] = [];
  const sendings: string[][] = [];
  const listeners: Listener<DayEvent>[] = [];
  const state = { network: 'up' as 'up' | 'cut' | 'answers lost', refuses: '' };
  const transport: Transport<DayEvent> = {
    send(_to, events) {
      if (state.network === 'cut') return Promise.reject(new Error('cut'));
      sendings.push(events.map(({ id }) => id));
      const refused = events.filter(
        (e) => e.kind === 'note' && state.refuses !== '' && e.payload.text.includes(state.refuses),
      );
      const taken = events.filter((event) => !refused.includes(event));
      kept.push(...taken.filter(({ id }) => kept.every((other) => other.id !== id)));
      if (state.network === 'answers lost') return Promise.reject(new Error('answer lost'));
      return Promise.resolve({
        arrived: taken.map(({ id }) => id),
        refused: refused.map(({ id }) => ({ id, why: 'it says so' })),
      });
    },
    follow(_of, listener) {
      listeners.push(listener);
      return { ask: () => undefined, stop: () => undefined };
    },
  };
  return { kept, sendings, listeners, state, transport };
}

const running: DeviceSync<DayEvent>[] = [];
afterEach(() => {
  for (const sync of running.splice(0)) sync.stop();
});

/** A page on a device; `closed` pages leave their store behind. */
function page(
  transport: Transport<DayEvent>,
  store: WaitingStore<DayEvent> = memoryStore(),
  clock = Date.now,
) {
  const shown: { state: DayState | null } = { state: null };
  const told: DayEvent[] = [];
  const sync = startSync(
    {
      prepare: DAY_LOG.prepare,
      destination: DAY,
      store: openStore(() => Promise.resolve(store)),
      transport,
      neighbours: {
        tell: (arrived) => void told.push(...arrived),
        hear: () => undefined,
        close: () => undefined,
      },
      now: () => new Date(clock()),
      changed: (state) => {
        shown.state = state;
      },
    },
    NOTHING,
  );
  running.push(sync);
  const now = () => {
    if (shown.state === null) throw new Error('nothing was shown yet');
    return shown.state;
  };
  const all = () => [...now().known, ...now().waiting.map(({ event }) => event)];
  return { sync, store, now, all, told };
}
const until = (check: () => void) => vi.waitFor(check, { timeout: 5_000, interval: 10 });
const texts = (events: readonly DayEvent[]) =>
  events.map((event) => (event.kind === 'note' ? event.payload.text : event.kind));

describe('entries between a device and the server', () => {
  test('what is pressed shows at once, is sent, and waits no longer once it is named', async () => {
    const { kept, transport } = server();
    const { sync, now, told } = page(transport);
    await sync.enter({ kind: 'done', refs: MIX, payload: {} });
    await sync.enter(note('  Butter was soft '));
    await until(() => expect(now().waiting).toEqual([]));
    expect(texts(kept)).toEqual(['done', 'Butter was soft']);
    expect(now().known).toEqual(kept);
    expect(told).toEqual(kept);
    expect(now().connected).toBe(true);
  });

  test('with the network cut all wait, in a store that the next page finds', async () => {
    const { kept, state, transport } = server();
    const first = page(transport);
    state.network = 'cut';
    await first.sync.enter({ kind: 'done', refs: MIX, payload: {} });
    await first.sync.enter(note('one'));
    await first.sync.enter(note('two', MIX));
    await until(() => expect(first.now()).toMatchObject({ connected: false }));
    expect(first.now().waiting).toHaveLength(3);
    expect(foldDay(first.all()).doneAt.has(rowKey(MIX))).toBe(true);
    expect(kept).toEqual([]);
    first.sync.stop();

    state.network = 'up';
    const second = page(transport, first.store);
    await until(() => expect(second.now().waiting).toEqual([]));
    expect(texts(kept)).toEqual(['done', 'one', 'two']);
    expect(kept.map(({ deviceSeq }) => deviceSeq)).toEqual([1, 2, 3]);
  });

  test('an answer that is lost makes no second entry', async () => {
    const { kept, sendings, state, transport } = server();
    const { sync, now } = page(transport);
    await until(() => expect(now().ready).toBe(true));
    state.network = 'answers lost';
    await sync.enter(note('once'));
    await until(() => expect(now().connected).toBe(false));
    expect(now().waiting).toHaveLength(1);
    state.network = 'up';
    sync.nudge();
    await until(() => expect(now()).toMatchObject({ connected: true, waiting: [] }));
    expect(sendings.length).toBeGreaterThan(1);
    expect(texts(kept)).toEqual(['once']);
  });

  test('without a nudge it is sent again by itself', async () => {
    const { kept, state, transport } = server();
    const { sync, now } = page(transport);
    state.network = 'cut';
    await sync.enter(note('later'));
    await until(() => expect(now().connected).toBe(false));
    state.network = 'up';
    await until(() => expect(texts(kept)).toEqual(['later']));
  });

  test('a device that is not let in any more is told so, and sends once it is', async () => {
    const { kept, listeners, transport } = server();
    let shut = true;
    const { sync, now } = page({
      ...transport,
      send: (...sent) => (shut ? Promise.reject(new ShutOut()) : transport.send(...sent)),
    });
    await sync.enter(note('held'));
    await until(() => expect(now()).toMatchObject({ connected: false, letIn: false }));
    expect(now().waiting).toHaveLength(1);
    shut = false;
    listeners[0]?.lost(new Error('cut'));
    expect(now().letIn).toBe(true);
    sync.nudge();
    await until(() => expect(texts(kept)).toEqual(['held']));
  });

  test('many go in their order, in parts that the server takes', async () => {
    const { kept, sendings, state, transport } = server();
    const { sync, now } = page(transport);
    state.network = 'cut';
    const all = Array.from({ length: BATCH * 2 + 3 }, (_, n) => `note ${n}`);
    for (const text of all) await sync.enter(note(text));
    state.network = 'up';
    sync.nudge();
    await until(() => expect(now().waiting).toEqual([]));
    expect(texts(kept)).toEqual(all);
    expect(Math.max(...sendings.map(({ length }) => length))).toBe(BATCH);
  });

  test('what is refused stays with its reason, holds up nothing, and can be sent again', async () => {
    const { kept, sendings, state, transport } = server();
    const { sync, now } = page(transport);
    state.refuses = 'bad';
    await sync.enter(note('bad one'));
    await sync.enter(note('good one'));
    await until(() => expect(texts(kept)).toEqual(['good one']));
    await until(() => expect(now().waiting.map(({ refused }) => refused)).toEqual(['it says so']));
    const count = sendings.length;
    sync.nudge();
    await until(() => expect(now().connected).toBe(true));
    expect(sendings).toHaveLength(count);
    state.refuses = '';
    const [refused] = now().waiting;
    await sync.sendAgain(refused?.id ?? '');
    await until(() => expect(now().waiting).toEqual([]));
    expect(texts(kept)).toEqual(['good one', 'bad one']);
    expect(new Set(kept.map(({ deviceSeq }) => deviceSeq)).size).toBe(2);
  });

  test('what is refused can be thrown away', async () => {
    const { state, transport } = server();
    const { sync, now, store } = page(transport);
    state.refuses = 'bad';
    await sync.enter(note('bad one'));
    await until(() => expect(now().waiting.map(({ refused }) => refused)).toEqual(['it says so']));
    await sync.throwAway(now().waiting[0]?.id ?? '');
    expect(now().waiting).toEqual([]);
    expect(await store.all()).toEqual([]);
  });

  test('news of another device is heard, and what was undone goes', async () => {
    const { listeners, transport } = server();
    const { now } = page(transport);
    const theirs = { ...foreign('n1'), at: '2026-05-02T08:00:00.000Z' };
    listeners[0]?.heard({ cursor: 7, whole: false, events: [theirs], gone: [] });
    expect(now().known).toEqual([theirs]);
    expect(listeners[0]?.after()).toBe(7);
    listeners[0]?.heard({ cursor: 9, whole: false, events: [], gone: ['n1'] });
    expect(now().known).toEqual([]);
  });

  test('taken back on a device whose clock is an hour slow, it is not done', async () => {
    const { listeners, transport } = server();
    const { sync, all, now } = page(transport, memoryStore(), () => Date.now() - 3_600_000);
    const done: DayEvent = {
      ...{ id: 'x', deviceId: 'fast', deviceSeq: 1, at: new Date().toISOString() },
      ...{ kind: 'done', refs: MIX, payload: {} },
    };
    listeners[0]?.heard({ cursor: 2, whole: false, events: [done], gone: [] });
    expect(foldDay(all()).doneAt.size).toBe(1);
    await sync.enter({ kind: 'takenBack', refs: MIX, payload: {} });
    await until(() => expect(now().waiting).toEqual([]));
    expect(foldDay(all()).doneAt.size).toBe(0);
  });
});

function foreign(id: string): DayEvent {
  return {
    ...{ id, deviceId: 'other', deviceSeq: 1, at: '' },
    ...{ kind: 'note', refs: {}, payload: { text: 'theirs' } },
  };
}

describe('where the browser keeps nothing', () => {
  test('entries are held in memory, sent all the same, and it is said', async () => {
    const { kept, state, transport } = server();
    state.network = 'cut';
    const store = openStore<DayEvent>(() =>
      Promise.reject(new DOMException('refused', 'SecurityError')),
    );
    const opened = await store;
    const { sync, now } = page(transport, opened);
    await sync.enter(note('held'));
    expect((await opened.all()).map(({ event }) => texts([event]))).toEqual([['held']]);
    expect(opened.lasts()).toBe(false);
    state.network = 'up';
    sync.nudge();
    await until(() => expect(now().waiting).toEqual([]));
    expect(texts(kept)).toEqual(['held']);
  });

  test('a store that breaks while it is used loses no entry, and sends none for ever', async () => {
    const { kept, sendings, transport } = server();
    const broken = memoryStore<DayEvent>();
    const full = () => Promise.reject(new DOMException('full', 'QuotaExceededError'));
    const { sync, now } = page(transport, { ...broken, add: full, remove: full });
    await broken.add(DAY, (deviceId, deviceSeq) => ({ ...foreign('left'), deviceId, deviceSeq }));
    await sync.enter(note('in memory'));
    await until(() => expect(now().waiting).toEqual([]));
    expect(texts(kept).sort()).toEqual(['in memory', 'theirs']);
    sync.nudge();
    await until(() => expect(now().connected).toBe(true));
    expect(sendings.flat().filter((id) => id === 'left')).toHaveLength(1);
  });

  test('it lasts again once nothing is held in memory alone', async () => {
    const lasting = memoryStore<DayEvent>();
    let full = true;
    const store = await openStore<DayEvent>(() =>
      Promise.resolve({
        ...lasting,
        add: (...entry) => (full ? Promise.reject(new Error('full')) : lasting.add(...entry)),
      }),
    );
    const event = await store.add(DAY, (deviceId, deviceSeq) => ({
      ...foreign('a'),
      deviceId,
      deviceSeq,
    }));
    await store.all();
    expect(store.lasts()).toBe(false);
    full = false;
    await store.remove([event.id]);
    await store.all();
    expect(store.lasts()).toBe(true);
  });
});

describe('what the server answers', () => {
  const events = [foreign('a'), foreign('b')];

  test('names what is kept, what was there already, and what is refused', () => {
    const answer = {
      kept: ['a'],
      already: ['b'],
      refused: [{ id: 'c', problem: { message: 'Its number is taken.' } }],
    };
    expect(readAnswer(answer, events)).toEqual({
      arrived: ['a', 'b'],
      refused: [{ id: 'c', why: 'Its number is taken.' }],
    });
  });

  test('a fault of one entry refuses that one only', () => {
    const problems = [{ path: 'events[1].payload.text', message: 'Too long.' }];
    expect(readAnswer({ problems }, events)).toEqual({
      arrived: [],
      refused: [{ id: 'b', why: 'Too long.' }],
    });
  });

  test.each([[null], ['<html>'], [{}], [{ kept: 'a' }], [{ problems: [{ path: '' }] }]])(
    'an answer that names no entry (%j) is none',
    (answer) => {
      expect(() => readAnswer(answer, events)).toThrow('names no entry');
    },
  );
});

describe('where the entries are, in words', () => {
  const at = {
    waiting: 0,
    connected: true,
    letIn: true,
    lasts: true,
    reloads: false,
    device: 'phone',
  } as const;

  test.each([
    [{}, 'Connected: every entry has arrived.'],
    [{ waiting: 2 }, 'Sending: 2 entries wait on this phone. Keep this page open.'],
    [
      { waiting: 3, connected: false },
      'Not connected: 3 entries wait on this phone. Keep this page open.',
    ],
    [
      { waiting: 1, connected: false, device: 'computer' as const },
      'Not connected: 1 entry waits on this computer. Keep this page open.',
    ],
    [
      { connected: false },
      'Not connected: what you press waits on this phone. Keep this page open.',
    ],
    [
      { waiting: 2, connected: false, letIn: false },
      'This phone is not let in any more: load this page again to let it in. 2 entries wait on it.',
    ],
    [
      { waiting: 3, connected: false, reloads: true },
      'Not connected: 3 entries wait on this phone.',
    ],
  ])('%j', (over, words) => {
    expect(connectionWords({ ...at, ...over })).toBe(words);
  });

  test('a browser that keeps nothing is told of plainly', () => {
    expect(lossWords({ lasts: true })).toBeNull();
    expect(lossWords({ lasts: false })).toMatch(/keeps nothing .* lost when the page is closed/);
  });
});
