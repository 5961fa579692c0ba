import { layoutSchema } from '#lib/episode/publish-schema';
import { photoSizeText } from '#lib/foods/photo-kinds';
import {
  called,
  celsius,
  chosen,
  counted,
  field,
  grams,
  measured,
  moment,
  named,
  numeric,
  ofFood,
  permille,
  plain,
  titled,
} from '#lib/overview/change-fields';
import type { Subject } from '#lib/overview/change-subjects';
import { minorText, priceText } from '#lib/units/print-money';
import { MOMENT_WORDS } from '#lib/shoot/house-shots';

const seconds = (s: number) => `${s} s`;
/** How many parts a house layout shows, and its limit. */
function layoutWords(value: unknown): string {
  const layout = layoutSchema.safeParse(value);
  if (!layout.success) return '';
  const { blocks, limit } = layout.data;
  const shown = blocks.filter((block) => block.shown).map(({ kind }) => kind);
  return `${shown.join(', ')}; ${limit} characters at most`;
}

/** The tables of kitchen, stock and this machine, in the words of the screen. */
export const OTHER_SUBJECTS = {
  Creator: {
    kind: ['creator', 'creators'],
    name: called,
    fields: [
      field('name', 'name'),
      measured('words a minute', 'wordsPerMinute', String),
      field('layout of descriptions', 'layout', layoutWords),
    ],
    silent: ['id'],
  },
  Kitchen: {
    kind: ['kitchen', 'kitchens'],
    name: called,
    fields: [
      field('name', 'name'),
      field('time zone', 'zone'),
      measured('latitude', 'lat', String),
      measured('longitude', 'lon', String),
      measured('burners', 'burners', String),
      measured('to move the camera', 'cameraChangeS', seconds),
      measured('places on the counter', 'counterPlaces', String),
      measured('a clean-down takes', 'cleanDownS', seconds),
      measured('the camera writes', 'videoMbps', (mbps) => `${mbps} Mbit/s`),
      chosen('shelf labels', 'shelfUnits', { metric: 'g and kg', us: 'oz and lb' }),
      permille('prices move in a year by', 'priceDriftPermille'),
    ],
    silent: ['id'],
  },
  Oven: {
    kind: ['oven', 'ovens'],
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      measured('racks', 'racks', String),
      celsius('cold', 'coldMilliC'),
      celsius('hottest', 'mostMilliC'),
      measured('heats by 1 °C in', 'heatSPerC', (s) => `${s} s`),
      measured('cools by 1 °C in', 'coolSPerC', (s) => `${s} s`),
    ],
    silent: ['id', 'kitchenId'],
  },
  OvenChange: {
    kind: ['measured oven time', 'measured oven times'],
    name: () => 'oven',
    placed: true,
    fields: [
      celsius('from', 'fromMilliC'),
      celsius('to', 'toMilliC'),
      measured('takes', 'seconds', (s) => `${s} s`),
    ],
    silent: ['id', 'ovenId'],
  },
  Appliance: {
    kind: ['appliance', 'appliances'],
    name: called,
    placed: true,
    fields: [field('name', 'name'), measured('takes at a time', 'places', String)],
    silent: ['id', 'kitchenId'],
  },
  HouseShot: {
    kind: ['shot of every dish', 'shots of every dish'],
    name: titled,
    placed: true,
    fields: [
      field('shot', 'title'),
      chosen('moment', 'moment', MOMENT_WORDS),
      field('framing', 'framing'),
      measured('length', 'lengthS', seconds),
    ],
    silent: ['id', 'kitchenId'],
  },
  Scale: {
    kind: ['scale', 'scales'],
    name: called,
    placed: true,
    fields: [
      field('name', 'name'),
      grams('steps of', 'resolutionMg'),
      measured('accuracy', 'accuracyPpm', (ppm) => `${ppm} parts per million`),
    ],
    silent: ['id', 'kitchenId'],
  },
  MeasureSpread: {
    kind: ['spread of a measure', 'spreads of measures'],
    name: (row) => plain(row.kind),
    placed: true,
    fields: [
      field('measure', 'kind'),
      measured('spread', 'permille', (thousandths) => `± ${thousandths / 10} %`),
    ],
    silent: ['id', 'kitchenId'],
  },
  StockLot: {
    kind: ['pack in stock', 'packs in stock'],
    name: ofFood,
    fields: [field('place', 'place'), field('opened on', 'openedOn'), field('use by', 'useBy')],
    silent: ['id', 'foodId'],
  },
  PantryFood: {
    kind: ['word about a food at home', 'words about foods at home'],
    name: ofFood,
    fields: [
      chosen('at home', 'answer', { have: 'have it', notEnough: 'not enough', none: 'none' }),
      field('said on', 'answeredOn'),
      field('remark', 'remark'),
      measured('days it keeps once opened', 'openedDays', String),
      field('says who', 'openedSource'),
    ],
    silent: ['id', 'foodId'],
  },
  StockMove: {
    kind: ['move of stock', 'moves of stock'],
    name: ({ deltaMg }) => `${(numeric(deltaMg) ?? 0) / 1000} g`,
    fields: [
      chosen('kind', 'kind', {
        bought: 'bought',
        counted: 'counted',
        used: 'used',
        thrownAway: 'thrown away',
      }),
      grams('by', 'deltaMg'),
      moment('at', 'at'),
    ],
    silent: ['id', 'lotId', 'eventId'],
  },
  Shop: {
    kind: ['shop', 'shops'],
    name: called,
    fields: [field('name', 'name'), counted('sections', 'sections')],
    silent: ['id'],
  },
  Pack: {
    kind: ['pack', 'packs'],
    name: called,
    fields: [
      field('name', 'name'),
      grams('net', 'netMg'),
      measured('net in ml', 'netMl', String),
      grams('drained', 'drainedMg'),
      field('bar code', 'gtin'),
      grams('loose, in steps of', 'stepMg'),
    ],
    silent: ['id', 'foodId'],
  },
  Price: {
    kind: ['price', 'prices'],
    name: ({ minor, currency }) => priceText(numeric(minor) ?? 0, plain(currency)),
    fields: [
      {
        words: 'price',
        columns: ['minor'],
        say: ({ minor, currency }) => minorText(numeric(minor) ?? 0, plain(currency)),
      },
      field('currency', 'currency'),
      field('seen on', 'seenOn'),
      named('shop', 'shopId'),
      field('offer', 'offer', (value) => (value === true ? 'yes' : 'no')),
      measured('for so many at once', 'count', String),
      measured('at most so many times', 'most', String),
      field('until', 'until'),
    ],
    silent: ['id', 'packId'],
  },
  Plan: {
    kind: ['shooting order', 'shooting orders'],
    name: () => '',
    fields: [moment('at', 'at')],
    silent: ['id', 'dayId', 'inputHash', 'engine', 'seed', 'result'],
  },
  PairedDevice: {
    kind: ['phone', 'phones'],
    name: called,
    fields: [field('name', 'name'), moment('let in', 'pairedAt'), moment('sent away', 'endedAt')],
    silent: ['id', 'tokenHash'],
  },
  Attachment: {
    kind: ['photo of the panel', 'photos of the panel'],
    place: 'versionId',
    name: called,
    fields: [field('name', 'name'), field('kind', 'mime'), measured('size', 'size', photoSizeText)],
    silent: ['id', 'sha256', 'versionId'],
  },
} as const satisfies Readonly<Record<string, Subject>>;
