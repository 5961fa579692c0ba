import { z } from 'zod';
import { kitchenSchema, ovenSchema } from '#lib/episode/schema';
import { id, position, positive, signed, whole } from '#lib/store/rows-basic';

const kitchen = kitchenSchema.shape;
const oven = ovenSchema.shape;
const change = oven.changes.element.shape;
const scale = kitchen.scales.element.shape;
const spread = kitchen.spreads.element.shape;

/** The tables of a kitchen, column by column, without the columns that every row has. */
export const KITCHEN_ROWS = {
  Kitchen: z.strictObject({
    id,
    name: kitchen.name,
    zone: kitchen.zone,
    lat: kitchen.lat,
    lon: kitchen.lon,
    burners: kitchen.burners,
  }),
  Oven: z.strictObject({
    id,
    kitchenId: id,
    position,
    name: oven.name,
    racks: oven.racks,
    coldMilliC: oven.coldMilliC,
    heatSPerC: oven.heatSPerC,
    coolSPerC: oven.coolSPerC,
  }),
  OvenChange: z.strictObject({
    id,
    ovenId: id,
    position,
    fromMilliC: signed,
    toMilliC: signed,
    seconds: change.seconds,
  }),
  Scale: z.strictObject({
    id,
    kitchenId: id,
    position,
    name: scale.name,
    resolutionMg: positive,
    accuracyPpm: whole,
  }),
  MeasureSpread: z.strictObject({
    id,
    kitchenId: id,
    position,
    kind: spread.kind,
    permille: spread.permille,
  }),
} as const;
