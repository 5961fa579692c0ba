import { beforeAll, expect, test } from 'vitest';
import type { DayEvent } from '#lib/shoot/day-log';
import { dayEventSchema } from '#lib/shoot/day-event-schema';
import { instantOf } from '#lib/shoot/local-time';
import type { ReplanNews } from '#lib/shoot/replan-words';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { POST } from '../../app/episodes/[id]/day/live/replan/route';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile } from './page-support';

withFreshDatabase();
let episodeId = '';
let dayId = '';
let date = '';
let zone = '';
beforeAll(async () => {
  const done = await importEpisodeFile(demoFile(), AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  const file = await readEpisodeFile(episodeId, AT.toISOString());
  dayId = file?.day?.id ?? '';
  date = file?.day?.date ?? '';
  zone = file?.kitchen.zone ?? '';
});

const at = (minute: number): string => instantOf(date, minute, zone).toISOString();

async function post(body: unknown, type = 'application/json') {
  const url = 'http://127.0.0.1/episodes/x/day/live/replan';
  const sent = new Request(url, {
    method: 'POST',
    body: JSON.stringify(body),
    headers: { 'content-type': type },
  });
  const response = await POST(sent, { params: Promise.resolve({ id: episodeId }) });
  expect(response.headers.get('cache-control')).toBe('no-store');
  const answer = (await response.json()) as ReplanNews & { problems?: { message: string }[] };
  return { status: response.status, answer };
}

test('a day that is an hour late gets another order, and taking it leaves nothing to move', async () => {
  const { status, answer } = await post({ dayId, at: at(600), events: [] });
  expect(status).toBe(200);
  expect(answer.changes.length).toBeGreaterThan(3);
  expect(answer.changes[0]).toMatch(/ moves from 09:\d\d to 1\d:\d\d$/);
  const taken: DayEvent = {
    id: 'taken-1',
    deviceId: 'phone',
    deviceSeq: 1,
    at: at(600),
    kind: 'replanned',
    refs: {},
    payload: answer.order,
  };
  expect(dayEventSchema.parse(JSON.parse(JSON.stringify(taken)))).toEqual(taken);
  // It counts where only the device has it, and where the program has it.
  const alone = await post({ dayId, at: at(600), events: [taken] });
  expect(alone.answer.changes).toEqual([]);
  expect((await keepDayEvents(dayId, [taken], AT)).kept).toEqual(['taken-1']);
  expect((await post({ dayId, at: at(600), events: [] })).answer.changes).toEqual([]);
});

test('what cannot be answered is told in words', async () => {
  const asked = { dayId, at: at(600), events: [] };
  expect((await post(asked, 'text/plain')).status).toBe(415);
  expect((await post({ ...asked, at: 'now' })).answer.problems?.[0]?.message).toContain('instant');
  expect((await post({ ...asked, dayId: 'other' })).status).toBe(404);
  const early = await post({ ...asked, at: at(-600) });
  expect(early.status).toBe(400);
  expect(early.answer.problems?.[0]?.message).toContain('on the filming day itself');
  expect((await post({ ...asked, events: [{ kind: 'shout' }] })).status).toBe(400);
});
