import { beforeAll, describe, expect, it } from 'vitest';
import type { DayEvent } from '#lib/shoot/day-log';
import { readingId } from '#lib/shoot/day-weighings';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { keepDayEvents } from '#lib/store/day-events';
import { readShortages } from '#lib/store/day-stock';
import { importEpisodeFile } from '#lib/store/import-file';
import { readEpisodeFile } from '#lib/store/read-episode';
import { removalEdits } from '#lib/store/remove-rows';
import { write } from '#lib/store/write';
import { AT, withFreshDatabase } from './database';
import { FILE } from './fixture';

withFreshDatabase();

let at = { dayId: '', recipeId: '', lineId: '', foodId: '', scaleId: '' };
const act = async (edits: readonly Edit[]) => {
  const done = await write({ actor: 'me', label: 'Act', at: AT, edits });
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
};
const lot = (id: string, useBy: string | null, mg: number): Edit[] => [
  {
    op: 'create',
    entity: 'StockLot',
    row: { id, foodId: at.foodId, place: 'shelf', openedOn: null, useBy },
  },
  {
    op: 'create',
    entity: 'StockMove',
    row: { id: `${id}-in`, lotId: id, kind: 'bought', deltaMg: mg, at: AT, eventId: null },
  },
];
const left = async (lotId: string) => {
  const moves = await database().stockMove.findMany({ where: { lotId, deletedAt: null } });
  return moves.reduce((sum, { deltaMg }) => sum + deltaMg, 0);
};
const stock = async () => Promise.all(['past', 'soon', 'later'].map(left));

beforeAll(async () => {
  const done = await importEpisodeFile(FILE, AT);
  if (!done.ok) throw new Error(JSON.stringify(done.problems));
  const file = await readEpisodeFile(done.value.episodeId, AT.toISOString());
  const dish = file?.episode.segments.find(({ recipe }) =>
    recipe?.lines.some(({ foodId }) => foodId !== null),
  );
  const line = dish?.recipe?.lines.find(({ foodId }) => foodId !== null);
  at = {
    dayId: file?.day?.id ?? '',
    recipeId: dish?.recipe?.id ?? '',
    lineId: line?.id ?? '',
    foodId: line?.foodId ?? '',
    scaleId: file?.kitchen.scales[0]?.id ?? '',
  };
  expect(Object.values(at)).not.toContain('');
  const old = await database().stockLot.findMany({ where: { foodId: at.foodId, deletedAt: null } });
  for (const { id, rev } of old) await act(await removalEdits('StockLot', id, rev));
  const row = await database().recipeLine.findUniqueOrThrow({ where: { id: at.lineId } });
  const asBought: Edit = {
    op: 'update',
    entity: 'RecipeLine',
    id: row.id,
    rev: row.rev,
    patch: { asBought: true },
  };
  await act([
    ...lot('past', '2026-01-01', 900_000),
    ...lot('later', null, 400_000),
    ...lot('soon', FILE.day?.date ?? '', 300_000),
    asBought,
  ]);
});

let made = 0;
function weighed(mg: number): DayEvent {
  made += 1;
  const { recipeId, lineId, scaleId } = at;
  return {
    id: `ds-${made}`,
    deviceId: 'phone',
    deviceSeq: made,
    at: new Date(AT.getTime() + made * 1000).toISOString(),
    kind: 'weighed',
    refs: {},
    payload: {
      ...{ recipeId, lineId, scaleId, of: 'raw', grossMg: mg + 50_000, tareMg: 50_000 },
      ...{ method: 'direct', afterId: null, answersId: null, photoId: null, readAt: null },
    },
  };
}
const keep = (events: readonly DayEvent[]) => keepDayEvents(at.dayId, events, AT);
const shortages = () => readShortages(at.dayId);

describe('what is weighed on the day', () => {
  const first = () => ({ ...weighed(500_000), id: 'first', deviceSeq: 101 });

  it('comes out of the lots once, the first to expire first, never one that is past', async () => {
    const sent = first();
    expect((await keep([sent])).kept).toEqual(['first']);
    expect(await stock()).toEqual([900_000, 0, 200_000]);
    expect((await keep([sent])).already).toEqual(['first']);
    expect(await stock()).toEqual([900_000, 0, 200_000]);
    expect(await shortages()).toEqual([]);
  });

  it('takes no gram twice where two phones weigh at once, and says what was short', async () => {
    await Promise.all([keep([weighed(150_000)]), keep([weighed(150_000)])]);
    expect(await stock()).toEqual([900_000, 0, 0]);
    expect(await shortages()).toMatchObject([
      { foodId: at.foodId, weighedMg: 800_000, takenMg: 700_000 },
    ]);
  });

  it('goes back where the reading is struck out', async () => {
    const reading = await database().weighing.findUniqueOrThrow({
      where: { id: readingId('first') },
    });
    await act(await removalEdits('Weighing', reading.id, reading.rev));
    expect(await stock()).toEqual([900_000, 300_000, 200_000]);
    expect(await shortages()).toMatchObject([{ weighedMg: 300_000, takenMg: 200_000 }]);
  });
});
