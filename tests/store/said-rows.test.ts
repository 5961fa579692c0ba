import { beforeAll, expect, test } from 'vitest';
import type { SaidLine } from '#lib/episode/said-line';
import type { DayEvent } from '#lib/shoot/day-log';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let episodeId = '';
let dayId = '';
let segmentId = '';

beforeAll(async () => {
  ({ episodeId, dayId, segmentId } = await imported());
});

async function imported() {
  const done = await importEpisodeFile({ ...FILE, said: [] }, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const file = await readEpisodeFile(done.value.episodeId, AT.toISOString());
  const dish = file?.episode.segments.find(({ recipe }) => recipe !== null);
  if (!file?.day || !dish) throw new Error('the file has a dish and a day');
  return { episodeId: done.value.episodeId, dayId: file.day.id, segmentId: dish.id };
}

const said = async (of = episodeId): Promise<readonly SaidLine[]> =>
  (await readEpisodeFile(of, AT.toISOString()))?.said ?? [];

let made = 0;
function event(over: Pick<DayEvent, 'kind' | 'payload'>): DayEvent {
  made += 1;
  const at = new Date(AT.getTime() + made * 1000).toISOString();
  return { id: `sv-${made}`, deviceId: 'p', deviceSeq: made, at, refs: {}, ...over } as DayEvent;
}
const saying = (scope: SaidLine['scope'], amount: number) =>
  event({
    kind: 'said',
    payload: {
      scope,
      text: `It has ${amount} calories.`,
      numbers: [{ nutrient: 'energyKcal', amount, hedge: 'exact', value: amount }],
    },
  });

test('a line that was entered as said on the day is the episode’s, until it was not said after all', async () => {
  const first = saying({ kind: 'whole', segmentId }, 640);
  await keepDayEvents(dayId, [first], AT);
  const instant = first.at.replace('.000Z', 'Z');
  expect(await said()).toEqual([{ id: first.id, at: instant, ...(first.payload as object) }]);
  const again = saying({ kind: 'whole', segmentId }, 655);
  await keepDayEvents(dayId, [again], AT);
  expect((await said()).map(({ id }) => id)).toEqual([again.id]);
  await keepDayEvents(dayId, [event({ kind: 'unsaid', payload: { saidId: again.id } })], AT);
  expect((await said()).map(({ id }) => id)).toEqual([first.id]);
});

test('a line about a portion that was never there is kept, one of a segment of another episode is not its own', async () => {
  const gone = saying({ kind: 'portion', segmentId, portionId: 'gone' }, 160);
  const other = saying({ kind: 'whole', segmentId: 'elsewhere' }, 1);
  await keepDayEvents(dayId, [gone, other], AT);
  const ids = (await said()).map(({ id }) => id);
  expect(ids).toContain(gone.id);
  expect(ids).not.toContain(other.id);
});

test('a line of the whole day is of the episode that the day was made for, also once another is filmed on it', async () => {
  const ofDay = saying({ kind: 'day' }, 1290);
  await keepDayEvents(dayId, [ofDay], AT);
  expect((await said()).map(({ id }) => id)).toContain(ofDay.id);
  const second = await imported();
  const shared = await write({
    actor: 'test',
    label: 'Film it that day too',
    at: AT,
    edits: [
      {
        op: 'create',
        entity: 'DayEpisode',
        row: { id: 'de-shared', dayId, episodeId: second.episodeId },
      },
    ],
  });
  expect(shared.ok).toBe(true);
  expect((await said()).map(({ id }) => id)).toContain(ofDay.id);
  expect(await said(second.episodeId)).toEqual([]);
});
