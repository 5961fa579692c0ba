import { beforeAll, describe, expect, test, vi } from 'vitest';
import { readListCode } from '#lib/shopping/list-code';
import { episodeScope, type ListEvent } from '#lib/shopping/list-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { GET as dishes } from '../../app/episodes/[id]/shopping/dishes/route';
import { GET, POST } from '../../app/episodes/[id]/shopping/events/route';
import { MOST_BYTES } from '../../app/_sync/sent-entries';
import { GET as carried } from '../../app/episodes/[id]/shopping/list.html/route';
import { GET as paid } from '../../app/episodes/[id]/shopping/paid.csv/route';
import { PUT } from '../../app/episodes/[id]/shopping/photo/[sha256]/route';
import { askedList, listQuery } from '../../app/episodes/[id]/shopping/scope';
import { GET as table } from '../../app/episodes/[id]/shopping/shopping.csv/route';
import { GET as data } from '../../app/episodes/[id]/shopping/shopping.json/route';
import { POST as takenFood } from '../../app/episodes/[id]/shopping/taken-food/route';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));

withFreshDatabase();
let episodeId = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
});

const BASE = 'http://127.0.0.1/episodes/x/shopping';
const to = (id = episodeId) => ({ params: Promise.resolve({ id }) });
const got = (query = '') => new Request(`${BASE}/file${query}`);
const sending = (body: string, type = 'application/json') =>
  new Request(`${BASE}/events`, { method: 'POST', body, headers: { 'content-type': type } });
async function read(response: Response) {
  const body = (await response.json()) as Record<string, unknown>;
  const problems = (body.problems ?? []) as { path: string; message: string }[];
  return { status: response.status, body, paths: problems.map(({ path }) => path) };
}
const tick = (seq: number, more: object = {}) => ({
  ...{ id: `t-${seq}`, scope: episodeScope(episodeId), deviceId: 'phone', deviceSeq: seq },
  ...{ at: AT.toISOString(), kind: 'paid', foodId: null },
  payload: { shopId: null, minor: 6115, currency: 'USD', on: '2026-12-11' },
  ...more,
});
const body = (...events: unknown[]) => JSON.stringify({ scope: episodeScope(episodeId), events });

describe('entries of a list over the wire', () => {
  test('each is named; sent twice it is kept once, and another device hears of it', async () => {
    const first = await read(await POST(sending(body(tick(1)))));
    expect(first).toMatchObject({ status: 200, body: { kept: ['t-1'], already: [], refused: [] } });
    const again = await read(await POST(sending(body(tick(1)))));
    expect(again.body).toMatchObject({ kept: [], already: ['t-1'] });
    const query = `?list=${encodeURIComponent(episodeScope(episodeId))}`;
    const news = await read(await GET(new Request(`${BASE}/events${query}`)));
    expect((news.body.events as ListEvent[]).map(({ id }) => id)).toEqual(['t-1']);
    const csv = await (await paid(got(), to())).text();
    expect(csv).toContain('2026-12-11,,,61.15,USD,');
  });

  test.each([
    ['no JSON', '{', ''],
    ['no list', '{"events":[]}', 'scope'],
    ['a list that is none', '{"scope":"all","events":[]}', 'scope'],
    ['a price below nothing', () => body(tick(9, { payload: { minor: -1 } })), 'events[0]'],
    ['a kind of no entry', () => body(tick(9, { kind: 'eaten' })), 'events[0].kind'],
  ])('%s is a 400 that says where', async (_what, sent, path) => {
    const text = typeof sent === 'string' ? sent : sent();
    const { status, paths } = await read(await POST(sending(text)));
    expect(status).toBe(400);
    expect(paths[0]).toContain(path);
  });

  test('a form, too much at once, and an episode that is gone are refused', async () => {
    expect((await POST(sending('x=1', 'text/plain'))).status).toBe(415);
    expect((await POST(sending('x'.repeat(MOST_BYTES + 1)))).status).toBe(413);
    const scope = episodeScope('gone');
    const gone = await POST(sending(JSON.stringify({ scope, events: [tick(8, { scope })] })));
    const { status, body: answer } = await read(gone);
    expect(status).toBe(404);
    expect(answer.refused).toHaveLength(1);
    expect((await GET(new Request(`${BASE}/events?list=${scope}`))).status).toBe(404);
    expect((await GET(new Request(`${BASE}/events?list=x`))).status).toBe(400);
  });

  test('a photo that no entry names, and a food of no entry, are refused', async () => {
    const sha256 = 'a'.repeat(64);
    const request = new Request(`${BASE}/photo/${sha256}`, { method: 'PUT', body: 'x' });
    const answer = await PUT(request, { params: Promise.resolve({ id: episodeId, sha256 }) });
    expect(answer.status).toBe(404);
    const asked = (text: string, id = episodeId) => takenFood(sending(text), to(id));
    expect((await asked('{"eventId":"nowhere"}')).status).toBe(400);
    expect((await asked('{"eventId":"no where"}')).status).toBe(400);
    expect((await asked('{"eventId":"t-1"}', 'gone')).status).toBe(404);
  });
});

describe('the list as files', () => {
  test('of an episode and of a span of days; none of an episode that is gone', async () => {
    for (const file of [carried, table, data, paid]) {
      expect((await file(got(), to())).status).toBe(200);
      expect((await file(got('?from=2030-01-01&to=2030-01-02'), to())).status).toBe(200);
      expect((await file(got(), to('gone'))).status).toBe(404);
    }
    expect((await dishes(got(), to('gone'))).status).toBe(404);
    const { body: fetched } = await read(await dishes(got(), to()));
    expect(fetched.files).toHaveLength(1);
  });

  test('the carried file names the list that the page reads codes of', async () => {
    const html = await (await carried(got(), to())).text();
    const [, name = ''] = /data-name="(\w+)"/.exec(html) ?? [];
    const list = (await (await data(got(), to())).json()) as { items: { foodId: string }[] };
    const foods = list.items.map(({ foodId }) => foodId).sort();
    const said = readListCode(`${name}00`, foods);
    expect(said.ok ? '' : said.message).toContain('too short');
  });

  test.each([
    ['', null, null],
    ['from=2026-12-12&to=2026-12-20', '2026-12-12', null],
    ['from=2026-12-12', null, 'both dates'],
    ['from=2026-13-12&to=2026-12-20', null, 'both dates'],
    ['from=2026-12-20&to=2026-12-12', null, 'before the first'],
  ])('?%s', (query, from, fault) => {
    const asked = askedList('e', new URLSearchParams(query));
    expect(asked.span?.from ?? null).toBe(from);
    if (fault === null) expect(asked.fault).toBeNull();
    else expect(asked.fault).toContain(fault);
    expect(listQuery(asked)).toBe(from === null ? '' : `?${query}`);
  });
});
