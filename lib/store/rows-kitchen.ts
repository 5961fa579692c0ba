import { z } from 'zod';
import {
  applianceSchema,
  houseShotSchema,
  kitchenSchema,
  ovenSchema,
} from '#lib/episode/kitchen-schema';
import { id, position, positive, signed, whole } from '#lib/store/rows-basic';

const kitchen = kitchenSchema.shape;
const oven = ovenSchema.shape;
const change = oven.changes.element.shape;
const appliance = applianceSchema.shape;
const houseShot = houseShotSchema.shape;
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
    cameraChangeS: kitchen.cameraChangeS.unwrap(),
    counterPlaces: kitchen.counterPlaces.unwrap(),
    cleanDownS: kitchen.cleanDownS.unwrap(),
    videoMbps: kitchen.videoMbps.unwrap(),
    shelfUnits: kitchen.shelfUnits,
    priceDriftPermille: kitchen.priceDriftPermille,
  }),
  Oven: z.strictObject({
    id,
    kitchenId: id,
    position,
    name: oven.name,
    racks: oven.racks,
    coldMilliC: oven.coldMilliC,
    mostMilliC: oven.mostMilliC.unwrap(),
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
  Appliance: z.strictObject({
    id,
    kitchenId: id,
    position,
    name: appliance.name,
    places: appliance.places,
  }),
  HouseShot: z.strictObject({
    id,
    kitchenId: id,
    position,
    title: houseShot.title,
    moment: houseShot.moment,
    framing: houseShot.framing,
    lengthS: houseShot.lengthS,
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
