import { beforeAll, expect, test } from 'vitest';
import type { DayEvent } from '#lib/shoot/day-log';
import { database } from '#lib/store/client';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { readLoggedSteps } from '#lib/store/read-logged-steps';
import { undo } from '#lib/store/undo';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let made = 0;
/** A mark of a step, so many minutes after the day's beginning. */
function mark(stepId: string, kind: 'started' | 'done', minute: number): DayEvent {
  made += 1;
  const at = new Date(AT.getTime() + minute * 60_000).toISOString();
  const own = { id: `ev-${made}`, deviceId: 'phone', deviceSeq: made, at };
  return { ...own, kind, refs: { stepId }, payload: {} };
}

let kitchenId = '';
let dayId = '';
let date = '';
let first = { id: '', title: '', usualS: 0 };
beforeAll(async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const file = await readEpisodeFile(done.value.episodeId, AT.toISOString());
  const step = file?.episode.segments.flatMap(({ steps }) => steps).at(0);
  if (!file?.day || !step) throw new Error('the file has a day with a step');
  kitchenId = file.kitchen.id;
  ({ id: dayId, date } = file.day);
  first = step;
});

test('what steps took on a kitchen’s days is read from their logs, and undone with them', async () => {
  expect(await readLoggedSteps(kitchenId)).toEqual([]);
  const minutes = Math.ceil(first.usualS / 60) + 3;
  const sent = [mark(first.id, 'started', 0), mark(first.id, 'done', minutes)];
  await keepDayEvents(dayId, sent, AT);
  const read = await readLoggedSteps(kitchenId);
  expect(read).toMatchObject([{ date, title: first.title, seconds: minutes * 60 }]);
  expect(await readLoggedSteps('no-such-kitchen')).toEqual([]);

  const { groupId } = await database().change.findFirstOrThrow({
    where: { entityId: sent[0]?.id ?? '' },
  });
  expect((await undo(groupId, { actor: 'test', at: AT })).ok).toBe(true);
  expect(await readLoggedSteps(kitchenId)).toEqual([]);
});

test('a step that was taken out since still says what it took', async () => {
  await keepDayEvents(dayId, [mark(first.id, 'started', 60), mark(first.id, 'done', 65)], AT);
  const { rev } = await database().step.findUniqueOrThrow({ where: { id: first.id } });
  const edits = [{ op: 'remove', entity: 'Step', id: first.id, rev }] as const;
  const removed = await write({ actor: 'test', label: 'Take a step out', at: AT, edits });
  expect(removed.ok).toBe(true);
  expect(await readLoggedSteps(kitchenId)).toMatchObject([{ title: first.title, seconds: 300 }]);
});
