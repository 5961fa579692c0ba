import { beforeEach, describe, expect, test, vi } from 'vitest';
import { importEpisodeFile } from '#lib/store/import-file';
import { readChanges } from '#lib/store/read-changes';
import { readDays } from '#lib/store/read-days';
import { readEpisodeFile, readRevisions } from '#lib/store/read-episode';
import { undo } from '#lib/store/undo';
import { saveDay } from '../../app/episodes/[id]/day/actions';
import {
  addEpisode,
  makeAnotherDay,
  takeDayOut,
  takeOff,
} from '../../app/episodes/[id]/day/days-actions';
import { dayOfRequest, withDay } from '../../app/episodes/[id]/day/asked-day';
import { POST as askSay } from '../../app/episodes/[id]/day/live/say/route';
import { GET as sheetText } from '../../app/episodes/[id]/day/day-sheet.txt/route';
import { AT, withFreshDatabase } from '../store/database';
import { demoFile, send } from './page-support';

vi.mock('next/cache', () => ({ revalidatePath: vi.fn() }));
vi.mock('next/navigation', async () => {
  const support = await import('./page-support');
  return {
    redirect: (href: string) => {
      throw new support.Redirected(href);
    },
  };
});

const NOW = '2026-12-10T08:00:00.000Z';

withFreshDatabase();
let first = '';
let second = '';
beforeEach(async () => {
  const brought = [];
  for (const title of ['Oat week', 'Quick suppers']) {
    const file = structuredClone(demoFile());
    file.episode.title = title;
    const done = await importEpisodeFile(file, AT);
    if (!done.ok) throw new Error(JSON.stringify(done.problems));
    brought.push(done.value.episodeId);
  }
  [first, second] = brought as [string, string];
});

async function read(id: string, dayId?: string) {
  const file = await readEpisodeFile(id, NOW, { dayId });
  if (!file) throw new Error('The episode is not there');
  return file;
}

async function dayOf(id: string) {
  const file = await read(id);
  return { dayId: file.day?.id ?? '', dishes: file.episode.segments.filter((s) => s.recipe) };
}

/** The dishes of the second on the day of the first. */
async function both() {
  const { dayId } = await dayOf(first);
  const { dishes } = await dayOf(second);
  const [whole, pickup] = dishes.map(({ id }) => id);
  const places = { [`place-${whole}`]: 'all', [`place-${pickup}`]: 'pickup' };
  const added = await send(addEpisode, { episodeId: first, dayId, otherId: second, ...places });
  return { dayId, whole: whole ?? '', pickup: pickup ?? '', added };
}

describe('another episode on a day', () => {
  test('is put there with its segments, whole or for a pickup, and both have the day', async () => {
    const { dayId, whole, pickup, added } = await both();
    expect(added.href).toBe(`/episodes/${first}/day?day=${dayId}`);
    const file = await read(first, dayId);
    expect(file.also?.map(({ title }) => title)).toEqual(['Quick suppers']);
    const places = file.day?.segments.slice(-2);
    expect(places).toMatchObject([
      { segmentId: whole, part: 'all', pickup: false },
      { segmentId: pickup, part: 'film', pickup: true },
    ]);
    expect((await readDays(second)).map(({ id }) => id)).toContain(dayId);
    expect((await readDays(second)).length).toBe(2);
    const address = `http://127.0.0.1/episodes/${second}/day/day-sheet.txt?day=${dayId}`;
    const sheet = await sheetText(new Request(address), {
      params: Promise.resolve({ id: second }),
    });
    expect(await sheet.text()).toContain('DAY SHEET: Oat week + Quick suppers');
  }, 60_000);

  test('is refused in words: twice, of a removed episode or segment, with nothing chosen, on a day that is not there', async () => {
    const { dayId: other } = await dayOf(second);
    const { dayId, whole } = await both();
    const ids = { episodeId: first, dayId, otherId: second };
    const words = async (sent: Record<string, string>) =>
      (await send(addEpisode, sent)).state.problems.map(({ message }) => message).join(' ');
    expect(await words({ ...ids, [`place-${whole}`]: 'all' })).toMatch(
      /^“Quick suppers” is on this day already/,
    );
    expect(await words({ ...ids, otherId: first, [`place-${whole}`]: 'all' })).toMatch(
      /^“Oat week” is on this day already/,
    );
    expect(await words({ ...ids, otherId: 'gone' })).toMatch(/removed meanwhile: choose another/);
    expect(await words({ ...ids, dayId: 'gone' })).toMatch(/none of this episode’s any more/);
    const further = { episodeId: second, dayId: other, otherId: first };
    expect(await words({ ...further, 'place-gone': 'all' })).toMatch(/was removed meanwhile/);
    expect(await words({ ...further, [`place-${whole}`]: '' })).toMatch(/^Choose what of it/);
    expect(await words({ ...further, [`place-${whole}`]: 'half' })).toMatch(/^Choose what of it/);
  });

  test('stays when what this episode films is changed, and goes by one press that undo takes back', async () => {
    const { dayId, whole, pickup } = await both();
    const file = await read(first, dayId);
    const revs = await readRevisions(first, undefined, dayId);
    const { day } = file;
    if (!day) throw new Error('the demo has a day');
    const [kept] = file.episode.segments;
    const sent = {
      ...{ episodeId: first, dayId, rev: revs[dayId] ?? 0, date: day.date, kind: day.kind },
      ...{ start: '08:00', wrapBy: '', mealGap: '0', lightMargin: '30', outfit: '' },
      [`film-${kept?.id ?? ''}`]: 'on',
    };
    expect((await send(saveDay, sent)).state.problems).toEqual([]);
    const ids = (await read(first, dayId)).day?.segments.map(({ segmentId }) => segmentId);
    expect(ids).toEqual([kept?.id, whole, pickup]);
    const off = await send(takeOff, { episodeId: first, dayId, otherId: second });
    expect(off.href).toBe(`/episodes/${first}/day?day=${dayId}`);
    expect((await read(first, dayId)).also).toBeUndefined();
    const [last] = await readChanges({ take: 1 });
    expect((await undo(last?.groupId ?? '', { actor: 'local', at: AT })).ok).toBe(true);
    expect((await read(first, dayId)).also).toHaveLength(1);
  });

  test('leaves no day of no episode behind', async () => {
    const { dayId } = await dayOf(first);
    const off = await send(takeOff, { episodeId: first, dayId, otherId: first });
    expect(off.state.problems.map(({ message }) => message)).toEqual([
      'It would be a day of no episode: take the day out instead.',
    ]);
    const { dayId: shared } = await both();
    const rev = (await readRevisions(first))[shared] ?? 0;
    const out = await send(takeDayOut, { episodeId: first, dayId: shared, rev });
    expect(out.state.problems[0]?.message).toMatch(/^Another episode is filmed on this day too/);
    const own = await send(takeOff, { episodeId: first, dayId: shared, otherId: first });
    expect(own.href).toBe(`/episodes/${first}/day`);
    expect(await readDays(first)).toEqual([]);
    expect((await read(second, shared)).day?.id).toBe(shared);
  });

  test('has its dishes at the scale and its lines to say there, each from its own numbers', async () => {
    const { dayId, whole } = await both();
    const ask = async (id: string) => {
      const body = JSON.stringify({ dayId, at: NOW, events: [] });
      const request = new Request('http://127.0.0.1/', {
        method: 'POST',
        body,
        headers: { 'content-type': 'application/json' },
      });
      const answer = await askSay(request, { params: Promise.resolve({ id }) });
      return (await answer.json()) as {
        dishes: { segmentId: string; title: string; says: { line: unknown; scope: object }[] }[];
      };
    };
    const [here, there] = [await ask(first), await ask(second)];
    const dish = here.dishes.find(({ segmentId }) => segmentId === whole);
    const same = there.dishes.find(({ segmentId }) => segmentId === whole);
    expect(dish?.title).toMatch(/\(Quick suppers\)$/);
    expect(dish).toEqual(same);
    const scopes = here.dishes.flatMap(({ says }) => says.map(({ scope }) => scope));
    expect(scopes).not.toContainEqual({ kind: 'day' });
  });
});

describe('another filming day', () => {
  test('has what is on none yet, is shown by its address, and can be taken out', async () => {
    const made = await send(makeAnotherDay, { episodeId: first });
    const [before, after] = await readDays(first);
    expect(made.href).toBe(`/episodes/${first}/day?day=${after?.id ?? ''}`);
    expect(after?.places).toEqual([]);
    expect((after?.date ?? '') > (before?.date ?? '')).toBe(true);
    expect((await read(first, after?.id)).day?.id).toBe(after?.id);
    const ids = { episodeId: first, dayId: after?.id ?? '', rev: after?.rev ?? 0 };
    expect((await send(takeDayOut, ids)).href).toBe(`/episodes/${first}/day`);
    expect(await readDays(first)).toHaveLength(1);
    expect((await send(takeDayOut, ids)).state.problems[0]?.message).toMatch(
      /none of this episode’s/,
    );
  });
});

test('an address names a day before its anchor, and gives it back', () => {
  expect(withDay('/x/day?at=1#row-1', 'd')).toBe('/x/day?at=1&day=d#row-1');
  expect(withDay('/x/day', null)).toBe('/x/day');
  expect(dayOfRequest(new Request('http://h/x?day=d'))).toBe('d');
  expect(dayOfRequest(new Request('http://h/x'))).toBeUndefined();
});
