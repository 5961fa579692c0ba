import type { Kitchen } from '#lib/episode/schema';
import type { Edit } from '#lib/store/command';
import { kitchenColumns, ovenColumns } from '#lib/store/episode-columns';

/** The edits that keep a kitchen for the first time, with all its parts and under its own ids. */
export function newKitchenEdits(kitchen: Kitchen): Edit[] {
  const kitchenId = kitchen.id;
  return [
    { op: 'create', entity: 'Kitchen', row: { id: kitchenId, ...kitchenColumns(kitchen) } },
    ...kitchen.ovens.flatMap((oven, position): Edit[] => [
      {
        op: 'create',
        entity: 'Oven',
        row: { id: oven.id, kitchenId, position, ...ovenColumns(oven) },
      },
      ...oven.changes.map((change, at): Edit => {
        const row = { ...change, ovenId: oven.id, position: at };
        return { op: 'create', entity: 'OvenChange', row };
      }),
    ]),
    ...kitchen.scales.map((scale, position): Edit => {
      return { op: 'create', entity: 'Scale', row: { ...scale, kitchenId, position } };
    }),
    ...kitchen.spreads.map((spread, position): Edit => {
      return { op: 'create', entity: 'MeasureSpread', row: { ...spread, kitchenId, position } };
    }),
  ];
}
