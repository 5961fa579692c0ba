import { beforeAll, expect, test } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import type { DayEvent } from '#lib/shoot/day-log';
import { keepDayEvents } from '#lib/store/day-events';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

const SHA = 'ab'.repeat(32);
let file: EpisodeFile;
beforeAll(async () => {
  file = await imported(FILE);
});

async function imported(from: EpisodeFile): Promise<EpisodeFile> {
  const done = await importEpisodeFile(from, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  return read(done.value.episodeId);
}
async function read(id: string): Promise<EpisodeFile> {
  const found = await readEpisodeFile(id, AT.toISOString());
  if (!found) throw new Error('the episode is there');
  return found;
}
const photographedIn = ({ episode }: EpisodeFile) =>
  episode.segments
    .flatMap(({ recipe }) => recipe?.lines ?? [])
    .flatMap(({ id, photographed }) => (photographed ? [{ id, ...photographed }] : []));

let made = 0;
function event(over: Pick<DayEvent, 'kind' | 'payload'>): DayEvent {
  made += 1;
  const at = new Date(AT.getTime() + made * 1000).toISOString();
  return { id: `ph-${made}`, deviceId: 'p', deviceSeq: made, at, refs: {}, ...over } as DayEvent;
}
const dish = () => {
  const recipe = file.episode.segments.find(({ recipe: of }) => of?.lines.length)?.recipe;
  const [line, scale] = [recipe?.lines[0], file.kitchen.scales[0]];
  if (!recipe || !line || !scale) throw new Error('the file has a dish and a scale');
  return { recipeId: recipe.id, lineId: line.id, scaleId: scale.id };
};
const photo = (lineId: string | null) =>
  event({
    kind: 'display',
    payload: {
      ...dish(),
      lineId,
      of: lineId === null ? 'finished' : 'raw',
      way: 'direct',
      containerMg: 0,
      beforeId: null,
      sha256: SHA,
    },
  });
const typed = (photoId: string) =>
  event({
    kind: 'weighed',
    payload: {
      ...dish(),
      of: 'raw',
      grossMg: 120_000,
      tareMg: 0,
      method: 'direct',
      afterId: null,
      answersId: null,
      photoId,
      readAt: null,
    },
  });

test('an ingredient is photographed from its photo until its number is typed or it is struck out', async () => {
  const dayId = file.day?.id ?? '';
  const keep = (...events: DayEvent[]) => keepDayEvents(dayId, events, AT);
  const now = async () => photographedIn(await read(file.episode.id));
  expect(await now()).toEqual([]);
  const first = photo(dish().lineId);
  await keep(first, photo(null));
  expect(await now()).toEqual([
    { id: dish().lineId, at: first.at.replace('.000Z', 'Z'), sha256: SHA },
  ]);
  await keep(typed(first.id));
  expect(await now()).toEqual([]);
  const second = photo(dish().lineId);
  await keep(second);
  expect(await now()).toHaveLength(1);
  await keep(event({ kind: 'struckOut', payload: { weighingId: second.id } }));
  expect(await now()).toEqual([]);
});

test('a file says it, and an import keeps it', async () => {
  const photographed = { at: '2026-05-02T10:10:00Z', sha256: SHA };
  const marked = structuredClone(FILE);
  const line = marked.episode.segments.flatMap(({ recipe }) => recipe?.lines ?? [])[0];
  if (!line) throw new Error('the file has an ingredient');
  line.photographed = photographed;
  const back = photographedIn(await imported(marked));
  expect(back).toMatchObject([photographed]);
});
