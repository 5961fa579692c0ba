import { beforeAll, describe, expect, test } from 'vitest';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { readingId } from '#lib/shoot/day-weighings';
import type { Weighed } from '#lib/shoot/scale-entries';
import { database } from '#lib/store/client';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { readDayEvents } from '#lib/store/read-day-events';
import { readEpisodeFile } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let episodeId = '';
let dayId = '';
let recipeId = '';
let lineId = '';
let scaleId = '';
const file = async () => {
  const read = await readEpisodeFile(episodeId, AT.toISOString());
  if (!read) throw new Error('no episode');
  return read;
};
const recipe = async () => {
  const found = (await file()).episode.segments.find((one) => one.recipe?.id === recipeId)?.recipe;
  if (!found) throw new Error('no dish');
  return found;
};
const readingsOf = async (ids: readonly string[]) =>
  (await recipe()).weighings.filter(({ id }) => ids.map(readingId).includes(id));

beforeAll(async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  episodeId = done.value.episodeId;
  const { day, episode, kitchen } = await file();
  const dish = episode.segments.find(({ recipe: own }) => (own?.lines.length ?? 0) > 0);
  dayId = day?.id ?? '';
  recipeId = dish?.recipe?.id ?? '';
  lineId = dish?.recipe?.lines[0]?.id ?? '';
  scaleId = kitchen.scales[0]?.id ?? '';
  expect([dayId, recipeId, lineId, scaleId]).not.toContain('');
});

let made = 0;
function event(entry: Entry): DayEvent {
  made += 1;
  const at = new Date(AT.getTime() + made * 1000).toISOString();
  return { id: `wg-${made}`, deviceId: 'phone', deviceSeq: made, at, ...entry } as DayEvent;
}
const weighed = (more: Partial<Weighed> = {}) =>
  event({
    kind: 'weighed',
    refs: {},
    payload: {
      recipeId,
      lineId,
      of: 'raw',
      grossMg: 252_000,
      tareMg: 12_000,
      method: 'direct',
      scaleId,
      afterId: null,
      answersId: null,
      photoId: null,
      readAt: null,
      ...more,
    },
  });
const strike = (weighingId: string) =>
  event({ kind: 'struckOut', refs: {}, payload: { weighingId } });
const keep = (...events: readonly DayEvent[]) => keepDayEvents(dayId, events, AT);

describe('a reading that was entered on the day', () => {
  test('is one of its dish, with the entry’s id, however often it is sent', async () => {
    const sent = weighed();
    expect(await keep(sent)).toMatchObject({ kept: [sent.id], refused: [] });
    expect(await keep(sent, sent)).toMatchObject({ kept: [], already: [sent.id] });
    expect(await readingsOf([sent.id])).toEqual([
      {
        id: readingId(sent.id),
        kind: 'raw',
        grossMg: 252_000,
        tareMg: 12_000,
        afterId: null,
        scaleId,
        method: 'direct',
        at: sent.at.replace('.000Z', 'Z'),
        shares: [{ lineId, share: { num: 1, den: 1 } }],
      },
    ]);
  });

  test('is there once where eight requests race', async () => {
    const sent = [weighed(), event({ kind: 'note', refs: {}, payload: { text: 'a' } }), weighed()];
    const answers = await Promise.all(Array.from({ length: 8 }, () => keep(...sent)));
    expect(answers.flatMap(({ kept }) => kept).sort()).toEqual(sent.map(({ id }) => id).sort());
    expect(await readingsOf(sent.map(({ id }) => id))).toHaveLength(2);
    const shares = await database().weighingShare.count({
      where: { weighingId: readingId(sent[0]?.id ?? '') },
    });
    expect(shares).toBe(1);
  });

  test('of a jar: the first one waits, the second takes its place, also within one sending', async () => {
    const first = weighed({ of: 'container', grossMg: 410_000, tareMg: 0 });
    await keep(first);
    expect(await readingsOf([first.id])).toMatchObject([{ kind: 'container' }]);
    const taken = { grossMg: 410_000, tareMg: 382_000, method: 'difference' } as const;
    const second = weighed({ ...taken, answersId: readingId(first.id) });
    const again = weighed({ ...taken, answersId: readingId(first.id) });
    const answer = await keep(second, again);
    // Two devices may both have answered it: the jar was emptied once.
    expect(answer).toMatchObject({ kept: [second.id] });
    expect(answer.refused).toMatchObject([{ id: again.id, problem: { code: 'gone' } }]);
    expect(await readingsOf([first.id, second.id, again.id])).toMatchObject([
      { id: readingId(second.id) },
    ]);

    const open = weighed({ of: 'container', grossMg: 500_000, tareMg: 0 });
    const closed = weighed({ ...taken, grossMg: 500_000, answersId: readingId(open.id) });
    expect(await keep(open, closed)).toMatchObject({ kept: [open.id, closed.id], refused: [] });
    expect(await readingsOf([open.id, closed.id])).toMatchObject([{ id: readingId(closed.id) }]);
  });

  test('counts from when its display was photographed', async () => {
    const readAt = new Date(AT.getTime() - 3_600_000).toISOString();
    const sent = weighed({ photoId: 'photo', readAt });
    await keep(sent);
    expect(await readingsOf([sent.id])).toMatchObject([{ at: readAt.replace('.000Z', 'Z') }]);
  });

  test('of the finished dish is shared by no ingredient; of what is left it says so of the ingredient', async () => {
    const finished = weighed({ of: 'finished', lineId: null });
    const left = weighed({ of: 'left', method: 'difference' });
    await keep(finished, left);
    expect(await readingsOf([finished.id, left.id])).toMatchObject([
      { kind: 'finished', shares: [] },
      { kind: 'left' },
    ]);
    const line = (await recipe()).lines.find(({ id }) => id === lineId);
    expect(line?.leftBehind.kind).toBe('weighed');
  });

  test('struck out it is gone from its dish and stays in the log; struck out twice is once', async () => {
    const sent = weighed();
    await keep(sent);
    const [one, two] = [strike(readingId(sent.id)), strike(readingId(sent.id))];
    expect(await keep(one, two)).toMatchObject({ kept: [one.id, two.id], refused: [] });
    expect(await readingsOf([sent.id])).toEqual([]);
    const { events } = await readDayEvents(dayId);
    expect(events.map(({ id }) => id)).toEqual(expect.arrayContaining([sent.id, one.id]));
  });

  test('undone in the journal, the entry and the reading go together', async () => {
    const sent = weighed();
    await keep(sent);
    const [change] = await database().change.findMany({ where: { entityId: sent.id } });
    expect(await undo(change?.groupId ?? '', { actor: 'me', at: AT })).toMatchObject({ ok: true });
    expect(await readingsOf([sent.id])).toEqual([]);
    expect((await readDayEvents(dayId)).events.map(({ id }) => id)).not.toContain(sent.id);
  });

  test('of what is not there is refused by name, and what was sent beside it is kept', async () => {
    const beside = event({ kind: 'note', refs: {}, payload: { text: 'kept' } });
    const wrong = [
      weighed({ recipeId: 'nowhere' }),
      weighed({ lineId: 'nothing' }),
      weighed({ scaleId: 'none' }),
      weighed({ answersId: 'never' }),
    ];
    const answer = await keep(...wrong, beside);
    expect(answer.kept).toEqual([beside.id]);
    expect(answer.refused.map(({ problem }) => problem.message)).toEqual([
      'This dish is no longer there: it was removed.',
      'This ingredient is no longer there: it was removed.',
      'The scale that it was read on is no longer there: it was removed.',
      'The first reading of it is no longer there: it was removed.',
    ]);
    expect(await readingsOf(wrong.map(({ id }) => id))).toEqual([]);
  });

  test('on top of a reading that was taken out still takes off what the scale showed', async () => {
    const below = weighed();
    await keep(below);
    const rev =
      (await database().weighing.findUnique({ where: { id: readingId(below.id) } }))?.rev ?? 0;
    const edits = await removalEdits('Weighing', readingId(below.id), rev);
    expect(await write({ actor: 'me', label: 'Take it out', at: AT, edits })).toMatchObject({
      ok: true,
    });
    const onTop = weighed({ grossMg: 300_000, tareMg: 252_000, afterId: readingId(below.id) });
    expect(await keep(onTop)).toMatchObject({ kept: [onTop.id] });
    expect(await readingsOf([onTop.id])).toMatchObject([{ tareMg: 252_000, afterId: null }]);
  });
});
