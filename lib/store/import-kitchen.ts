import { kitchenSchema, type Kitchen } from '#lib/episode/kitchen-schema';
import { database } from '#lib/store/client';
import type { Edit } from '#lib/store/command';
import { kitchenColumns, ovenColumns } from '#lib/store/episode-columns';
import { kitchenFrom } from '#lib/store/from-rows';
import type { ImportIds } from '#lib/store/import-ids';
import { ALIVE, KITCHEN_INCLUDE } from '#lib/store/load';
import { dataText } from '#lib/store/same-data';

/** The edits that bring a file's kitchen in, and its id: the stored one if its data is equal, else a new one. */
export async function importKitchen(
  kitchen: Kitchen,
  creatorId: string,
  ids: ImportIds,
): Promise<{ readonly kitchenId: string; readonly edits: Edit[] }> {
  const stored = await equalKitchen(kitchen, creatorId, ids);
  if (stored) {
    kitchen.ovens.forEach((oven, at) => ids.use('oven', oven.id, stored.ovens[at]?.id ?? ''));
    kitchen.appliances.forEach((appliance, at) =>
      ids.use('appliance', appliance.id, stored.appliances[at]?.id ?? ''),
    );
    kitchen.scales.forEach((scale, at) => ids.use('scale', scale.id, stored.scales[at]?.id ?? ''));
    return { kitchenId: stored.id, edits: [] };
  }
  const kitchenId = ids.fresh(kitchen.id);
  const named = {
    ...kitchen,
    id: kitchenId,
    ovens: kitchen.ovens.map((oven) => ({
      ...oven,
      id: ids.mint('oven', oven.id),
      changes: oven.changes.map((change) => ({ ...change, id: ids.fresh(change.id) })),
    })),
    scales: kitchen.scales.map((scale) => ({ ...scale, id: ids.mint('scale', scale.id) })),
    appliances: kitchen.appliances.map((appliance) => ({
      ...appliance,
      id: ids.mint('appliance', appliance.id),
    })),
    spreads: kitchen.spreads.map((spread) => ({ ...spread, id: ids.fresh(spread.id) })),
    houseShots: kitchen.houseShots.map((shot) => ({ ...shot, id: ids.fresh(shot.id) })),
  };
  return { kitchenId, edits: kitchenEdits(named) };
}

/** A kitchen with all its parts as new rows, under its own ids. */
export function kitchenEdits(kitchen: Kitchen): Edit[] {
  const kitchenId = kitchen.id;
  return [
    { op: 'create', entity: 'Kitchen', row: { id: kitchenId, ...kitchenColumns(kitchen) } },
    ...kitchen.ovens.map((oven, position): Edit => ({
      op: 'create',
      entity: 'Oven',
      row: { id: oven.id, kitchenId, position, ...ovenColumns(oven) },
    })),
    ...kitchen.ovens.flatMap((oven) =>
      oven.changes.map((change, position): Edit => ({
        op: 'create',
        entity: 'OvenChange',
        row: { ...change, ovenId: oven.id, position },
      })),
    ),
    ...kitchen.appliances.map((appliance, position): Edit => ({
      op: 'create',
      entity: 'Appliance',
      row: { ...appliance, kitchenId, position },
    })),
    ...kitchen.houseShots.map((shot, position): Edit => ({
      op: 'create',
      entity: 'HouseShot',
      row: { ...shot, kitchenId, position },
    })),
    ...kitchen.scales.map((scale, position): Edit => ({
      op: 'create',
      entity: 'Scale',
      row: { ...scale, kitchenId, position },
    })),
    ...kitchen.spreads.map((spread, position): Edit => ({
      op: 'create',
      entity: 'MeasureSpread',
      row: { ...spread, kitchenId, position },
    })),
  ];
}

async function equalKitchen(
  kitchen: Kitchen,
  creatorId: string,
  ids: ImportIds,
): Promise<Kitchen | null> {
  const stored = await database().kitchen.findMany({
    where: { ...ALIVE, creatorId, name: kitchen.name },
    orderBy: { id: 'asc' },
    include: KITCHEN_INCLUDE,
  });
  const wanted = dataText(kitchen);
  const kitchens = stored
    .filter((row) => ids.mayUse(kitchen.id, row.id))
    .map((row) => kitchenSchema.parse(kitchenFrom(row)));
  return kitchens.find((candidate) => dataText(candidate) === wanted) ?? null;
}
