import type {
  CheckedEntry,
  CheckedFile,
  CheckedLink,
  CheckedPlan,
  CheckedSegment,
  CheckedStep,
} from './checker-data';

/*
 * A small filming day and an order for it, both written by hand: two dishes, one oven with two racks, one
 * burner. The oven heats from 20 °C to 200 °C in 180 × 3 s = 9 min and cools to 180 °C in a measured 5 min.
 */

const step = (
  id: string,
  title: string,
  usualS: number,
  more: Partial<CheckedStep>,
): CheckedStep => ({
  id,
  title,
  role: 'cook',
  usualS,
  choose: null,
  hands: true,
  burners: 0,
  racks: 0,
  oven: null,
  onCamera: false,
  daylight: false,
  restS: 0,
  contact: null,
  evening: false,
  cameraSetUp: '',
  applianceId: null,
  counter: 0,
  ...more,
});

const link = (
  id: string,
  fromStepId: string,
  toStepId: string,
  minLagS: number | null,
  maxLagS: number | null,
): CheckedLink => ({
  id,
  fromStepId,
  toStepId,
  fromAnchor: 'end',
  toAnchor: 'start',
  minLagS,
  maxLagS,
  reason: 'in this order',
});

const pie: CheckedSegment = {
  id: 'pie',
  kind: 'recipe',
  recipe: {},
  filmedWhen: null,
  title: 'Pie',
  eaten: { num: 1, den: 2 },
  steps: [
    step('mix', 'Mix', 600, { role: 'prep', onCamera: true }),
    step('bake', 'Bake the pie', 1150, {
      hands: false,
      racks: 1,
      oven: { ovenId: 'oven', milliC: 200_000 },
    }),
    step('show', 'Show it hot', 300, { role: 'shoot', onCamera: true }),
    step('eatPie', 'Eat the pie', 900, { role: 'eat' }),
  ],
  perishables: [
    {
      id: 'filling',
      name: 'Filling',
      limitS: 3600,
      thrownAway: false,
      spans: [
        { fromStepId: 'mix', fromAnchor: 'end', toStepId: 'bake', toAnchor: 'start' },
        { fromStepId: 'bake', fromAnchor: 'end', toStepId: 'eatPie', toAnchor: 'start' },
        { fromStepId: 'eatPie', fromAnchor: 'end', toStepId: 'mix', toAnchor: 'start' },
      ],
    },
  ],
  washUpS: 590,
};

const stew: CheckedSegment = {
  id: 'stew',
  kind: 'recipe',
  recipe: {},
  filmedWhen: null,
  title: 'Stew',
  eaten: { num: 1, den: 1 },
  steps: [
    step('fry', 'Fry', 480, { burners: 1 }),
    step('simmer', 'Simmer', 720, {
      hands: false,
      burners: 1,
      choose: { minS: 600, maxS: 900 },
    }),
    step('gratin', 'Brown the top', 600, {
      hands: false,
      racks: 2,
      oven: { ovenId: null, milliC: 180_000 },
    }),
    step('eatStew', 'Eat the stew', 600, { role: 'eat' }),
  ],
  perishables: [],
  washUpS: 300,
};

export const smallFile: CheckedFile & { readonly day: NonNullable<CheckedFile['day']> } = {
  kitchen: {
    zone: 'UTC',
    lat: null,
    lon: null,
    counterPlaces: null,
    cameraChangeS: null,
    cleanDownS: 300,
    appliances: [],
    burners: 1,
    ovens: [
      {
        id: 'oven',
        name: 'Oven',
        racks: 2,
        coldMilliC: 20_000,
        changes: [{ fromMilliC: 200_000, toMilliC: 180_000, seconds: 300 }],
        heatSPerC: 3,
        coolSPerC: 60,
      },
    ],
  },
  episode: {
    segments: [pie, stew],
    links: [
      link('l1', 'mix', 'bake', 0, null),
      link('l2', 'bake', 'show', 0, 330),
      link('l3', 'show', 'eatPie', 0, null),
      link('l4', 'fry', 'simmer', null, 59),
      link('l5', 'simmer', 'gratin', 90, null),
      link('l6', 'gratin', 'eatStew', 0, null),
    ],
  },
  day: {
    id: 'day',
    date: '2026-03-14',
    kind: 'asLived',
    startMin: 480,
    wrapByMin: 600,
    mealGapMin: 60,
    lightMarginMin: 0,
    segments: [
      { segmentId: 'pie', part: 'all' },
      { segmentId: 'stew', part: 'all' },
    ],
    appointments: [{ id: 'call', title: 'Call', startMin: 560, endMin: 570, hands: true }],
    pins: [{ stepId: 'fry', notBeforeMin: 495, notAfterMin: null }],
  },
};

const entry = (
  id: string,
  startMin: number,
  endMin: number,
  more: Partial<CheckedEntry>,
): CheckedEntry => ({
  id,
  kind: 'step',
  stepId: null,
  segmentId: null,
  title: id,
  startMin,
  endMin,
  hands: false,
  onCamera: false,
  ovenId: null,
  milliC: null,
  racks: 0,
  burners: 0,
  why: 'by hand',
  ...more,
});

const carry = (
  segment: CheckedSegment,
  stepId: string,
  startMin: number,
  endMin: number,
): CheckedEntry => {
  const done = segment.steps.find((s) => s.id === stepId);
  if (!done) throw new Error(`no step ${stepId}`);
  return entry(stepId, startMin, endMin, {
    stepId,
    segmentId: segment.id,
    title: done.title,
    hands: done.hands,
    onCamera: done.onCamera,
    ovenId: done.oven ? 'oven' : null,
    milliC: done.oven?.milliC ?? null,
    racks: done.racks,
    burners: done.burners,
  });
};

const heat = { ovenId: 'oven' };

export const smallPlan: CheckedPlan = {
  dayId: 'day',
  date: '2026-03-14',
  kind: 'asLived',
  startMin: 480,
  wrapMin: 585,
  status: 'feasible',
  entries: [
    carry(pie, 'mix', 480, 490),
    entry('preheat', 481, 490, { ...heat, kind: 'preheat', milliC: 200_000 }),
    carry(pie, 'bake', 490, 510),
    carry(stew, 'fry', 495, 503),
    carry(stew, 'simmer', 503, 515),
    carry(pie, 'show', 510, 515),
    entry('coolDown', 510, 515, { ...heat, kind: 'coolDown', milliC: 180_000 }),
    carry(pie, 'eatPie', 515, 530),
    carry(stew, 'gratin', 517, 527),
    entry('washPie', 530, 540, { kind: 'washUp', segmentId: 'pie', hands: true }),
    entry('washStew', 540, 545, { kind: 'washUp', segmentId: 'stew', hands: true }),
    entry('call', 560, 570, { kind: 'appointment', title: 'Call', hands: true }),
    carry(stew, 'eatStew', 575, 585),
  ],
  lots: [{ perishableId: 'filling', segmentId: 'pie', name: 'Filling', minutes: 5, limitMin: 60 }],
  broken: [],
};

/** The small order with one entry changed (or, given null, left out), put in order again. */
export function withEntry(id: string, change: Partial<CheckedEntry> | null): CheckedPlan {
  const entries = smallPlan.entries.flatMap((e) => {
    if (e.id !== id) return [e];
    return change === null ? [] : [{ ...e, ...change }];
  });
  return { ...smallPlan, entries: entries.sort(byStart) };
}

/** The small order with one more entry. */
export function withMore(
  id: string,
  startMin: number,
  endMin: number,
  more: Partial<CheckedEntry>,
) {
  const entries = [...smallPlan.entries, entry(id, startMin, endMin, more)].sort(byStart);
  return { ...smallPlan, entries };
}

function byStart(a: CheckedEntry, b: CheckedEntry): number {
  return a.startMin - b.startMin || Number(b.hands) - Number(a.hands) || (a.id < b.id ? -1 : 1);
}

/** The small file with another day, kitchen, links or step. */
export function withDay(change: Partial<typeof smallFile.day>): CheckedFile {
  return { ...smallFile, day: { ...smallFile.day, ...change } };
}

export function withOven(change: Partial<CheckedFile['kitchen']['ovens'][number]>): CheckedFile {
  const ovens = smallFile.kitchen.ovens.map((o) => ({ ...o, ...change }));
  return { ...smallFile, kitchen: { ...smallFile.kitchen, ovens } };
}

export function withLink(id: string, change: Partial<CheckedLink>): CheckedFile {
  const links = smallFile.episode.links.map((l) => (l.id === id ? { ...l, ...change } : l));
  return { ...smallFile, episode: { ...smallFile.episode, links } };
}

export function withSegment(id: string, change: Partial<CheckedSegment>): CheckedFile {
  const segments = smallFile.episode.segments.map((s) => (s.id === id ? { ...s, ...change } : s));
  return { ...smallFile, episode: { ...smallFile.episode, segments } };
}

export function withStep(id: string, change: Partial<CheckedStep>): CheckedFile {
  const segments = smallFile.episode.segments.map((s) => ({
    ...s,
    steps: s.steps.map((one) => (one.id === id ? { ...one, ...change } : one)),
  }));
  return { ...smallFile, episode: { ...smallFile.episode, segments } };
}
