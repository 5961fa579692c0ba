import type { FilmingDay } from '#lib/episode/day-schema';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import {
  UNSAID_DAY,
  UNSAID_DAY_SEGMENT,
  UNSAID_KITCHEN,
  UNSAID_OVEN,
  UNSAID_SEGMENT,
  UNSAID_STEP,
} from '#lib/episode/unsaid';

/** A step of ten minutes that needs nothing, but for what is given. */
export function step(id: string, more: Partial<Step> = {}): Step {
  return {
    id,
    title: `Step ${id}`,
    role: 'cook',
    lowS: 0,
    usualS: 600,
    highS: 86_400,
    choose: null,
    hands: false,
    burners: 0,
    racks: 0,
    oven: null,
    coreMilliC: null,
    restS: 0,
    ...UNSAID_STEP,
    onCamera: false,
    daylight: false,
    note: '',
    ...more,
  };
}

export function segment(id: string, steps: readonly Step[], more: Partial<Segment> = {}): Segment {
  return {
    id,
    kind: 'recipe',
    title: `Dish ${id}`,
    batches: { num: 1, den: 1 },
    eaten: { num: 1, den: 1 },
    ate: { kind: 'share' },
    inFrame: null,
    outFrame: null,
    plannedS: 60,
    recipe: null,
    steps: [...steps],
    perishables: [],
    shots: [],
    talkingPoints: [],
    spareTakes: 0,
    spareScope: 'whole',
    washUpS: 0,
    ...UNSAID_SEGMENT,
    ...more,
  };
}

export function link(
  fromStepId: string,
  toStepId: string,
  minLagS: number | null,
  maxLagS: number | null,
  more: Partial<StepLink> = {},
): StepLink {
  return {
    id: `${fromStepId}-${toStepId}`,
    fromStepId,
    toStepId,
    fromAnchor: 'end',
    toAnchor: 'start',
    minLagS,
    maxLagS,
    reason: 'in this order',
    ...more,
  };
}

export const oven: Oven = {
  id: 'oven',
  name: 'Oven',
  racks: 2,
  ...UNSAID_OVEN,
  coldMilliC: 20_000,
  changes: [],
  heatSPerC: 6,
  coolSPerC: 12,
};

/** A file with one filming day from 09:00 in Copenhagen on 2026-06-06, packed, with one oven. */
export function dayFile(
  segments: readonly Segment[],
  links: readonly StepLink[] = [],
  day: Partial<FilmingDay> = {},
  kitchen: Partial<Kitchen> = {},
): EpisodeFile {
  return {
    format: 'scale-and-slate/episode',
    version: 1,
    recipes: [],
    savedAt: '2026-06-01T08:00:00Z',
    creator: { id: 'creator', name: 'One Cook', wordsPerMinute: null },
    kitchen: {
      ...UNSAID_KITCHEN,
      id: 'kitchen',
      name: 'Kitchen',
      zone: 'Europe/Copenhagen',
      lat: null,
      lon: null,
      burners: 2,
      ovens: [oven],
      scales: [],
      spreads: [],
      ...kitchen,
    },
    foods: [],
    episode: {
      id: 'episode',
      title: 'A small day',
      hook: '',
      region: 'EU',
      publishOn: null,
      rate: { num: 25, den: 1 },
      dropFrame: false,
      targets: [],
      anythingElse: null,
      segments: [...segments],
      links: [...links],
      webLinks: [],
      energyStep: 1,
      disclosure: '',
    },
    day: {
      ...UNSAID_DAY,
      id: 'day',
      date: '2026-06-06',
      kind: 'packed',
      startMin: 540,
      wrapByMin: null,
      mealGapMin: 0,
      segments: segments.map(({ id }) => ({
        ...UNSAID_DAY_SEGMENT,
        id: `on-${id}`,
        segmentId: id,
      })),
      appointments: [],
      pins: [],
      ...day,
    },
    said: [],
    stock: [],
    packs: [],
    pantry: [],
    shops: [],
  };
}
