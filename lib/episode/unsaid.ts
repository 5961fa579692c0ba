import type { FilmingDay } from '#lib/episode/day-schema';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { RecipeLine } from '#lib/episode/recipe-schema';
import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import type { Pack } from '#lib/episode/stock-schema';

/** What steps, ingredients, segments, kitchens, days and packs are as long as nobody has said more; the schema's own defaults. */

export const UNSAID_STEP = {
  contact: null,
  evening: false,
  cameraSetUp: '',
  applianceId: null,
  counter: 0,
} as const satisfies Partial<Step>;

export const UNSAID_LINE = {
  shopNote: '',
  photographed: null,
} as const satisfies Partial<RecipeLine>;

export const UNSAID_SEGMENT = {
  chapter: true,
  filmedWhen: null,
  pickupReserve: 0,
  claims: null,
} as const satisfies Partial<Segment>;

export const UNSAID_PACK = { stepMg: null, prices: [] } satisfies Partial<Pack>;

export const UNSAID_OVEN = { mostMilliC: null } as const satisfies Partial<Oven>;

export const UNSAID_KITCHEN = {
  cameraChangeS: null,
  counterPlaces: null,
  cleanDownS: 300,
  videoMbps: null,
  appliances: [],
  houseShots: [],
  shelfUnits: 'metric',
  priceDriftPermille: 50,
} satisfies Partial<Kitchen>;

export const UNSAID_DAY = { lightMarginMin: 30, outfit: '' } as const satisfies Partial<FilmingDay>;

export const UNSAID_DAY_SEGMENT = {
  pickup: false,
  part: 'all',
  fate: null,
} as const satisfies Partial<FilmingDay['segments'][number]>;
