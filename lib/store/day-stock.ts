import 'server-only';
import { v7 as uuid } from 'uuid';
import { stockLotSchema, pantryFoodSchema } from '#lib/episode/stock-schema';
import { foodSchema } from '#lib/foods/food';
import type { DayEvent, WeighedEvent } from '#lib/shoot/day-log';
import { readingId } from '#lib/shoot/day-weighings';
import type { Shortage } from '#lib/shopping/shortage';
import { offTheShelf, takeFromLots } from '#lib/shopping/take-from-lots';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { DEFAULT_CREATOR_ID } from '#lib/store/creators';
import { foodFrom, lotFrom, pantryFrom } from '#lib/store/from-rows';
import { ALIVE, foodInclude, LOT_INCLUDE } from '#lib/store/load';
import { eventFrom } from '#lib/store/read-day-events';

/** The day and the food that a reading is of; null where it is of no raw food that has lots. */
async function weighedFood(dayId: string, event: WeighedEvent, creatorId: string) {
  const { of, lineId, grossMg, tareMg } = event.payload;
  if (of !== 'raw' || lineId === null || grossMg <= tareMg) return null;
  const mine = { ...ALIVE, creatorId };
  const db = database();
  const line = await db.recipeLine.findFirst({ where: { ...mine, id: lineId } });
  const foodId = line?.foodId ?? null;
  if (line === null || foodId === null) return null;
  const lots = await db.stockLot.findMany({ where: { ...mine, foodId }, include: LOT_INCLUDE });
  if (lots.length === 0) return null;
  const [day, row, said] = await Promise.all([
    db.filmingDay.findFirst({ where: { ...mine, id: dayId } }),
    db.food.findUnique({ where: { id: foodId }, include: foodInclude(creatorId) }),
    db.pantryFood.findFirst({ where: { ...mine, foodId }, orderBy: { id: 'desc' } }),
  ]);
  if (day === null || row === null) return null;
  const food = foodSchema.parse(foodFrom(row));
  return {
    food,
    date: day.date,
    mg: offTheShelf(grossMg - tareMg, line, food),
    lots: lots.map((lot) => stockLotSchema.parse(lotFrom(lot))),
    opened: said && pantryFoodSchema.parse(pantryFrom(said)).opened,
  };
}

/**
 * The moves by which a reading takes its food out of the lots. They name the entry and are written with it, so that
 * they are there once; what the lots lack is not made up.
 */
export async function stockEdits(
  dayId: string,
  event: WeighedEvent,
  creatorId: string,
): Promise<readonly Edit[]> {
  const weighed = await weighedFood(dayId, event, creatorId);
  if (weighed === null) return [];
  const { food, lots, mg, date, opened } = weighed;
  return takeFromLots(food, lots, mg, date, opened).takes.map((take): Edit => ({
    op: 'create',
    entity: 'StockMove',
    row: {
      id: uuid(),
      lotId: take.lotId,
      kind: 'used',
      deltaMg: -take.mg,
      at: new Date(event.at),
      eventId: event.id,
    },
  }));
}

/** The shortages that a filming day found, by the name of the food. Foods without lots are short of nothing known. */
export async function readShortages(
  dayId: string,
  creatorId = DEFAULT_CREATOR_ID,
): Promise<readonly Shortage[]> {
  const db = database();
  const rows = await db.dayEvent.findMany({
    where: { ...ALIVE, creatorId, dayId, kind: 'weighed' },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  const found = new Map<string, Shortage>();
  for (const event of await standing(rows.map(eventFrom))) {
    const weighed = await weighedFood(dayId, event, creatorId);
    if (weighed === null) continue;
    const moves = await db.stockMove.findMany({ where: { ...ALIVE, eventId: event.id } });
    const taken = moves.reduce((sum, { deltaMg }) => sum - deltaMg, 0);
    const { id: foodId, name } = weighed.food;
    const known = found.get(foodId) ?? { foodId, name, weighedMg: 0, takenMg: 0 };
    const weighedMg = known.weighedMg + weighed.mg;
    found.set(foodId, { ...known, weighedMg, takenMg: known.takenMg + taken });
  }
  return [...found.values()]
    .filter(({ weighedMg, takenMg }) => weighedMg > takenMg)
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Entries at the scale whose readings still stand. */
async function standing(events: readonly DayEvent[]): Promise<readonly WeighedEvent[]> {
  const weighed = events.filter((event) => event.kind === 'weighed');
  const readings = await database().weighing.findMany({
    where: { ...ALIVE, id: { in: weighed.map(({ id }) => readingId(id)) } },
    select: { id: true },
  });
  const there = new Set(readings.map(({ id }) => id));
  return weighed.filter(({ id }) => there.has(readingId(id)));
}
