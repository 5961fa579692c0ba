import { beforeAll, describe, expect, test } from 'vitest';
import type { DayEvent } from '#lib/shoot/day-log';
import { importEpisodeFile } from '#lib/store/import-file';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { GET, POST } from '../../app/episodes/[id]/day/events/route';
import { MOST_BYTES, MOST_EVENTS } from '../../app/_sync/sent-entries';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile } from './page-support';

withFreshDatabase();
let episodeId = '';
let dayId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  dayId = (await readEpisodeFile(episodeId, AT.toISOString()))?.day?.id ?? '';
});

const to = (id: string) => ({ params: Promise.resolve({ id }) });
const url = (query = '') => `http://127.0.0.1/episodes/x/day/events${query}`;

async function post(body: BodyInit, { id = episodeId, type = 'application/json' } = {}) {
  const headers = { 'content-type': type };
  const sent = new Request(url(), { method: 'POST', body, headers, duplex: 'half' } as RequestInit);
  return read(await POST(sent, to(id)));
}
async function get(query: string, id = episodeId) {
  return read(await GET(new Request(url(query)), to(id)));
}
async function read(response: Response) {
  expect(response.headers.get('cache-control')).toBe('no-store');
  const body = (await response.json()) as Record<string, unknown>;
  const problems = (body.problems ?? []) as { path: string; message: string }[];
  return { status: response.status, body, problems };
}

let made = 0;
function note(text = 'a note', over: object = {}): DayEvent {
  made += 1;
  const own = { id: `n-${made}`, deviceId: 'phone', deviceSeq: made, at: AT.toISOString() };
  return { ...own, kind: 'note', refs: {}, payload: { text }, ...over } as DayEvent;
}
const sent = (...events: unknown[]) => JSON.stringify({ dayId, events });

describe('sending', () => {
  test('each entry is named; sent twice it is kept once', async () => {
    const events = [note('one'), note('two')];
    const first = await post(sent(...events));
    const again = await post(sent(...events), { type: 'application/json; charset=utf-8' });
    const ids = events.map(({ id }) => id);
    expect(first).toMatchObject({ status: 200, body: { kept: ids, already: [], refused: [] } });
    expect(again).toMatchObject({ status: 200, body: { kept: [], already: ids, refused: [] } });
    expect((await readDayEvents(dayId)).events).toEqual(events);
  });

  test.each([
    ['no JSON', '{"dayId":', ''],
    ['a list', '[]', ''],
    ['no day', JSON.stringify({ events: [note()] }), 'dayId'],
    ['no entries', JSON.stringify({ dayId: 'd', events: [] }), 'events'],
    ['a field too many', JSON.stringify({ dayId: 'd', events: [note()], more: 1 }), ''],
  ])('%s is a 400 that says where', async (_what, body, path) => {
    const { status, problems } = await post(body);
    expect(status).toBe(400);
    expect(problems.map((problem) => problem.path)).toEqual([path]);
    expect(problems[0]?.message).not.toBe('');
  });

  test.each([
    ['events[1].payload.text', 'A note has at most 400 characters', note('x'.repeat(401))],
    ['events[1].payload.text', 'A note has some text', note('  ')],
    ['events[1].at', 'Not an instant such as 2026-05-02T08:00:00.000Z', note('x', { at: 'now' })],
    ['events[1].deviceSeq', null, note('x', { deviceSeq: -1 })],
    [
      'events[1].refs',
      'Names one row, by stepId or entryId',
      note('x', { kind: 'done', refs: {}, payload: {} }),
    ],
    ['events[1].kind', null, note('x', { kind: 'drop table' })],
    ['events[1].id', 'An id has 1 to 64 letters, digits or : . - _', note('x', { id: '<b>' })],
    ['events[1]', null, null],
  ])('a fault at %s is told there, and nothing is kept', async (path, message, bad) => {
    const good = note('good one');
    const { status, problems } = await post(sent(good, bad));
    expect(status).toBe(400);
    const found = problems.find((problem) => problem.path === path);
    expect(found).toBeDefined();
    if (message !== null) expect(found?.message).toBe(message);
    const { events } = await readDayEvents(dayId);
    expect(events.some(({ id }) => id === good.id)).toBe(false);
  });

  test('200 entries are taken at once, 201 are not', async () => {
    const many = Array.from({ length: MOST_EVENTS + 1 }, () => note());
    const over = await post(sent(...many));
    expect(over).toMatchObject({ status: 400, problems: [{ path: 'events' }] });
    const { status, body } = await post(sent(...many.slice(1)));
    expect(status).toBe(200);
    expect(body.kept).toHaveLength(MOST_EVENTS);
  });

  test('a body that is too long is a 413, whether or not it tells its length', async () => {
    const long = `${sent(note())}${' '.repeat(MOST_BYTES)}`;
    expect((await post(long)).status).toBe(413);
    let pulled = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull: (controller) => {
        pulled += 1;
        controller.enqueue(new Uint8Array(16_384).fill(32));
      },
    });
    expect((await post(endless)).status).toBe(413);
    expect(pulled).toBeLessThan(10);
    const padded = sent(note());
    const just = padded.padEnd(
      MOST_BYTES - (new TextEncoder().encode(padded).length - padded.length),
    );
    expect((await post(just)).status).toBe(200);
  });

  test('only JSON is taken, so that no form of another site can send', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'application/jsonx']) {
      expect((await post(sent(note()), { type })).status).toBe(415);
    }
  });

  test('for a day that is not this episode’s each entry is named as refused', async () => {
    const lost = note();
    const answers = [
      await post(sent(lost), { id: 'no-such-episode' }),
      await post(JSON.stringify({ dayId: 'no-such-day', events: [lost] })),
    ];
    for (const { status, body } of answers) {
      expect(status).toBe(404);
      expect(body).toMatchObject({
        kept: [],
        refused: [{ id: lost.id, problem: { code: 'gone' } }],
      });
    }
  });
});

describe('asking', () => {
  test('without a cursor all of the day, after it what came since', async () => {
    const all = await get(`?day=${dayId}`);
    expect(all).toMatchObject({ status: 200, body: { whole: true } });
    const event = note('later');
    await post(sent(event));
    const since = await get(`?day=${dayId}&after=${String(all.body.cursor)}`);
    expect(since).toMatchObject({ status: 200, body: { whole: false, events: [event], gone: [] } });
  });

  test.each([
    ['?after=0', 'day'],
    ['?day=x&after=-1', 'after'],
    ['?day=x&after=1e3', 'after'],
    ['?day=x&more=1', ''],
  ])('%s is a 400 that says where', async (query, path) => {
    const { status, problems } = await get(query);
    expect(status).toBe(400);
    expect(problems.map((problem) => problem.path)).toEqual([path]);
  });

  test('a day that is not this episode’s is a 404', async () => {
    expect((await get('?day=no-such-day')).status).toBe(404);
    expect((await get(`?day=${dayId}`, 'no-such-episode')).status).toBe(404);
  });
});
