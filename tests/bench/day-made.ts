import type { EpisodeFile, Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { link, segment, step } from '../shoot/made-day';
import { seeded, type Chance } from '../shoot/seeded';
import { UNSAID_DAY, UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';

/** Minutes, and who or what a step takes; `links` of it lead from steps before it. */
interface Made {
  readonly name: string;
  readonly minutes: readonly [number, number];
  readonly more: Partial<Step>;
  /** From which step's end, and how soon at most, in minutes. Without one: from the step before, whenever. */
  readonly after?: readonly (readonly [name: string, atLeast: number, atMost: number | null])[];
}

const HAND = { hands: true } as const;
const FILMED = { hands: true, onCamera: true } as const;

/** The end of every dish: shown hot, its number said, tasted or eaten, the rest put away. */
const finish = (last: string, hotMin: number, eaten: boolean): Made[] => [
  { name: 'show', minutes: [4, 8], more: { ...FILMED, role: 'shoot' }, after: [[last, 0, hotMin]] },
  { name: 'number', minutes: [2, 5], more: { ...FILMED, role: 'talk' }, after: [['show', 0, 5]] },
  eaten
    ? { name: 'eat', minutes: [12, 20], more: { ...HAND, role: 'eat' }, after: [['number', 0, 10]] }
    : {
        name: 'taste',
        minutes: [2, 5],
        more: { ...FILMED, role: 'taste' },
        after: [['number', 0, 10]],
      },
  { name: 'chill', minutes: [3, 5], more: { ...HAND, role: 'prep' } },
];

type Dish = (chance: Chance, eaten: boolean) => Made[];

const baked: Dish = (chance, eaten) => {
  const oven = { ovenId: null, milliC: chance.pick([180_000, 200_000, 220_000]) };
  return [
    { name: 'weigh', minutes: [5, 9], more: { ...FILMED, role: 'prep' } },
    { name: 'mix', minutes: [8, 14], more: { ...FILMED, role: 'prep' } },
    { name: 'clean', minutes: [4, 6], more: { ...HAND, role: 'wash' }, after: [['mix', 0, 5]] },
    { name: 'bake', minutes: [18, 40], more: { oven, racks: 1 }, after: [['mix', 0, 30]] },
    {
      name: 'sauce',
      minutes: [4, 8],
      more: { ...HAND, role: 'prep' },
      after: [['weigh', 0, null]],
    },
    {
      name: 'brush',
      minutes: [2, 4],
      more: { ...FILMED, role: 'cook' },
      after: [
        ['bake', 0, 2],
        ['sauce', 0, null],
      ],
    },
    { name: 'brown', minutes: [8, 15], more: { oven, racks: 1 }, after: [['brush', 0, 2]] },
    {
      name: 'slice',
      minutes: [4, 7],
      more: { ...FILMED, role: 'shoot' },
      after: [['brown', 8, 20]],
    },
    ...finish('slice', 10, eaten),
  ];
};

const inThePan: Dish = (_chance, eaten) => [
  { name: 'chop', minutes: [10, 18], more: { ...FILMED, role: 'prep' } },
  { name: 'toast', minutes: [4, 7], more: { ...FILMED, burners: 1 } },
  { name: 'simmer', minutes: [20, 35], more: { burners: 1 }, after: [['toast', 0, 2]] },
  { name: 'brown', minutes: [8, 14], more: { ...FILMED, burners: 1 }, after: [['chop', 0, null]] },
  {
    name: 'fold',
    minutes: [3, 5],
    more: { ...FILMED, burners: 1 },
    after: [
      ['simmer', 0, 15],
      ['brown', 0, 5],
    ],
  },
  ...finish('fold', 10, eaten),
];

const layered: Dish = (chance, eaten) => {
  const oven = { ovenId: null, milliC: chance.pick([150_000, 160_000, 180_000]) };
  return [
    { name: 'rub', minutes: [5, 9], more: { ...FILMED, role: 'prep' } },
    { name: 'crumb', minutes: [12, 20], more: { oven, racks: 1 }, after: [['rub', 0, 30]] },
    { name: 'takeOut', minutes: [1, 2], more: HAND, after: [['crumb', 0, 2]] },
    { name: 'fruit', minutes: [5, 8], more: { ...HAND, burners: 1 }, after: [['rub', 0, null]] },
    {
      name: 'layer',
      minutes: [6, 10],
      more: { ...FILMED, role: 'prep' },
      after: [
        ['takeOut', 15, null],
        ['fruit', 5, 60],
      ],
    },
    { name: 'set', minutes: [30, 60], more: { role: 'wait' } },
    ...finish('set', 15, eaten),
  ];
};

const DISHES: readonly Dish[] = [baked, inThePan, layered];

/** How a made-up day is made: so many dishes, of which so many are eaten, hours apart. */
export interface DaySize {
  readonly dishes: number;
  readonly meals: number;
  readonly mealGapMin: number;
}

/**
 * A made-up filming day in the kitchen of `file`: a hello, dishes of three kinds by turns with minutes and oven
 * degrees by chance, a sign-off. Equal seeds give equal days. All of it is invented, common practice, no source.
 */
export function madeDay(
  file: EpisodeFile,
  size: DaySize,
  kind: 'asLived' | 'packed',
  seed: number,
): EpisodeFile {
  const chance = seeded(seed);
  const links: StepLink[] = [];
  const eaten = new Set(
    Array.from({ length: size.meals }, (_, meal) =>
      Math.floor(((meal + 1) * size.dishes) / size.meals - 1),
    ),
  );
  const dishes = Array.from({ length: size.dishes }, (_, index) => {
    const of = DISHES[(index + seed) % DISHES.length] ?? baked;
    return dish(chance, `dish-${index}`, of(chance, eaten.has(index)), links);
  });
  const hello = talk('hello', [
    ['set', 5],
    ['say', 12],
  ]);
  const bye = talk('bye', [
    ['chalk', 6],
    ['sum', 10],
  ]);
  links.push(link('hello.set', 'hello.say', 0, null), link('bye.chalk', 'bye.sum', 0, 15 * 60));
  for (const { steps } of dishes) {
    links.push(link('hello.say', steps.find(({ role }) => role === 'shoot')?.id ?? '', 0, null));
    links.push(link(steps.find(({ role }) => role === 'talk')?.id ?? '', 'bye.chalk', 0, null));
  }
  const segments = [hello, ...dishes, bye];
  return {
    ...file,
    episode: { ...file.episode, segments, links },
    day: {
      id: `made-${seed}`,
      date: '2026-12-12',
      kind,
      startMin: 480,
      wrapByMin: null,
      mealGapMin: size.mealGapMin,
      ...UNSAID_DAY,
      segments: segments.map(({ id }) => ({
        ...UNSAID_DAY_SEGMENT,
        id: `on-${id}`,
        segmentId: id,
      })),
      appointments: [{ id: 'call', title: 'A call', startMin: 660, endMin: 670, hands: true }],
      pins: [],
    },
  };
}

function dish(chance: Chance, id: string, made: readonly Made[], links: StepLink[]): Segment {
  const steps = made.map(({ name, minutes, more }) => {
    const usualS = chance.int(...minutes) * 60;
    const [lowS, highS] = [Math.floor(usualS * 0.8), Math.ceil(usualS * 1.4)];
    return step(`${id}.${name}`, { title: name, lowS, usualS, highS, ...more });
  });
  made.forEach(({ name, after }, index) => {
    const before = made[index - 1];
    for (const [from, least, most] of after ?? (before ? [[before.name, 0, null] as const] : [])) {
      links.push(
        link(`${id}.${from}`, `${id}.${name}`, least * 60, most === null ? null : most * 60),
      );
    }
  });
  const raw = made.some(({ name }) => name === 'clean');
  return segment(id, steps, {
    washUpS: chance.int(6, 14) * 60,
    perishables: raw ? [rawLot(id)] : [],
  });
}

/** What is raw stands out until it is baked, and again from the first cut until it is chilled: two hours in all. */
function rawLot(id: string): Segment['perishables'][number] {
  const span = (from: string, to: string, toAnchor: 'start' | 'end') => ({
    fromStepId: `${id}.${from}`,
    fromAnchor: 'start' as const,
    toStepId: `${id}.${to}`,
    toAnchor,
  });
  return {
    id: `${id}.lot`,
    name: 'Raw mix',
    limitS: 7200,
    spans: [span('weigh', 'bake', 'start'), span('slice', 'chill', 'end')],
    thrownAway: false,
  };
}

function talk(id: string, parts: readonly (readonly [string, number])[]): Segment {
  const steps = parts.map(([name, minutes]) => {
    const usualS = minutes * 60;
    const more = { lowS: usualS / 2, usualS, highS: usualS * 2, role: 'talk' as const };
    return step(`${id}.${name}`, { title: name, ...FILMED, ...more });
  });
  return segment(id, steps, { kind: 'talk', recipe: null });
}
