import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import type { Chance } from './seeded';
import { UNSAID_SEGMENT, UNSAID_STEP } from '#lib/episode/unsaid';

/** A step that must follow another: at least so many minutes from its end, or from its start. */
export interface Need {
  readonly stepId: string;
  readonly anchor: 'start' | 'end';
  readonly minMin: number;
}

/**
 * A step while a day is made. `tie` binds it to the step before it in the list: it starts at that step's
 * end, or up to so many minutes later ("taken out when done", "shown hot").
 */
export interface DraftStep {
  readonly step: Step;
  readonly needs: readonly Need[];
  readonly tie: { readonly maxMin: number; readonly reason: string } | null;
}

export interface DraftSegment {
  readonly segment: Segment;
  readonly drafts: readonly DraftStep[];
}

/** What a segment may use: the kitchen, the temperatures of the day. */
export interface Means {
  readonly kitchen: Kitchen;
  readonly milliCs: readonly number[];
}

type Kind = 'prep' | 'mix' | 'fry' | 'simmer' | 'bake' | 'wait' | 'mark' | 'takeOut';
type Finish = 'shoot' | 'taste' | 'eat';

const MINUTES: Readonly<Record<Kind | Finish | 'talk', readonly [number, number]>> = {
  prep: [3, 18],
  mix: [2, 12],
  fry: [4, 20],
  simmer: [8, 40],
  bake: [10, 55],
  wait: [5, 60],
  mark: [0, 0],
  takeOut: [1, 5],
  shoot: [3, 15],
  taste: [2, 8],
  eat: [10, 25],
  talk: [2, 20],
};

const TITLES: Readonly<Record<Kind | Finish | 'talk', string>> = {
  prep: 'Weigh and cut',
  mix: 'Mix',
  fry: 'Fry',
  simmer: 'Simmer',
  bake: 'Bake',
  wait: 'Let rest',
  mark: 'Note the time',
  takeOut: 'Take it out',
  shoot: 'Show the dish',
  taste: 'Taste on camera',
  eat: 'Eat',
  talk: 'Say the piece',
};

/** A step of a kind: its length, who and what it takes. Half of the lengths are no whole minutes. */
function makeStep(chance: Chance, id: string, kind: Kind | Finish | 'talk', means: Means): Step {
  const { kitchen, milliCs } = means;
  const [low, high] = MINUTES[kind];
  const minutes = chance.int(low, high);
  const usualS =
    minutes === 0 || chance.percent(50) ? minutes * 60 : minutes * 60 - chance.int(1, 59);
  const self = kind === 'simmer' || kind === 'bake' || kind === 'wait' || kind === 'mark';
  const oven = kind === 'bake' && chance.percent(35) ? chance.pick(kitchen.ovens) : null;
  const most = oven?.racks ?? Math.min(...kitchen.ovens.map((o) => o.racks));
  const spread = { minS: Math.floor(usualS * 0.8), maxS: Math.ceil(usualS * 1.25) };
  const shown = kind === 'shoot' || kind === 'taste' || kind === 'talk';
  const roles = { prep: 'prep', mix: 'prep', wait: 'wait', mark: 'wait' } as const;
  return {
    id,
    title: TITLES[kind],
    role:
      kind in roles ? roles[kind as keyof typeof roles] : shown || kind === 'eat' ? kind : 'cook',
    lowS: Math.floor(usualS * 0.8),
    usualS,
    highS: Math.ceil(usualS * 1.4),
    choose: usualS > 120 && chance.percent(12) ? spread : null,
    hands: !self || (kind === 'bake' && chance.percent(5)),
    burners: kind === 'fry' || kind === 'simmer' ? chance.int(1, Math.min(2, kitchen.burners)) : 0,
    racks: kind === 'bake' ? chance.int(1, most) : 0,
    oven: kind === 'bake' ? { ovenId: oven?.id ?? null, milliC: chance.pick(milliCs) } : null,
    coreMilliC: null,
    restS: 0,
    ...UNSAID_STEP,
    onCamera: kind !== 'mark' && chance.percent(self ? 8 : shown ? 95 : 40),
    daylight: false,
    note: '',
  };
}

/** The kinds of a recipe's steps in order: preparing, the work itself, showing, tasting, eating. */
function recipeKinds(chance: Chance, count: number, eats: boolean): (Kind | Finish)[] {
  const finish: (Kind | Finish)[] = [];
  if (count > 3 && chance.percent(75)) finish.push('shoot');
  if (count > 4 && chance.percent(40)) finish.push('taste');
  if (eats) finish.push('eat');
  const kinds: (Kind | Finish)[] = ['prep'];
  while (kinds.length + finish.length < count) {
    const last = kinds[kinds.length - 1];
    if (last === 'bake' && chance.percent(75)) kinds.push('takeOut');
    else if (last === 'simmer' && chance.percent(30)) kinds.push('takeOut');
    else if (chance.percent(4)) kinds.push('mark');
    else kinds.push(chance.pick(['prep', 'mix', 'fry', 'simmer', 'bake', 'bake', 'wait'] as const));
  }
  return [...kinds, ...finish];
}

/** How tightly a step hangs on the one before it. */
function tieOf(
  chance: Chance,
  kind: Kind | Finish | 'talk',
  before: Kind | Finish | 'talk',
): DraftStep['tie'] {
  if (kind === 'takeOut')
    return { maxMin: chance.int(0, 5), reason: 'must be taken out when done' };
  const hot = before === 'bake' || before === 'fry' || before === 'simmer' || before === 'takeOut';
  if (kind === 'shoot' && hot && chance.percent(65)) {
    return { maxMin: chance.int(5, 20), reason: 'shown hot' };
  }
  if (kind === 'taste' && before === 'shoot' && chance.percent(40)) {
    return { maxMin: chance.int(5, 20), reason: 'tasted while hot' };
  }
  if (kind === 'eat' && before !== 'wait' && chance.percent(35)) {
    return { maxMin: chance.int(20, 60), reason: 'eaten while warm' };
  }
  return null;
}

/**
 * A segment whose steps stand in an order in which they can be done: every need of a step points back in
 * the list. Work may branch (a sauce beside a roast); showing, tasting and eating wait for every branch.
 */
export function randomSegment(
  chance: Chance,
  id: string,
  kind: 'recipe' | 'talk',
  eats: boolean,
  means: Means,
): DraftSegment {
  const recipe = kind === 'recipe';
  const count = recipe ? chance.int(3, 9) : chance.int(3, 4);
  const talk = Array.from({ length: count }, () => 'talk' as const);
  const kinds = recipe ? recipeKinds(chance, count, eats) : talk;
  const drafts: DraftStep[] = [];
  kinds.forEach((stepKind, i) => {
    const step = makeStep(chance, `${id}-${i + 1}`, stepKind, means);
    const before = drafts[i - 1];
    const beforeKind = kinds[i - 1];
    if (!before || beforeKind === undefined) {
      drafts.push({ step, needs: [], tie: null });
      return;
    }
    const tie = tieOf(chance, stepKind, beforeKind);
    const finish = stepKind === 'shoot' || stepKind === 'taste' || stepKind === 'eat';
    const used = new Set(drafts.flatMap((d) => d.needs.map((n) => n.stepId)));
    const open = drafts.map((d) => d.step.id).filter((s) => !used.has(s));
    const branch = recipe && !tie && !finish && chance.percent(30);
    const first = branch ? chance.pick(drafts).step.id : before.step.id;
    const ids = new Set(finish ? [first, ...open] : [first]);
    const needs = [...ids].map((stepId): Need => {
      const tied = tie !== null && stepId === before.step.id;
      const overlapping = branch && chance.percent(30);
      return {
        stepId,
        anchor: overlapping ? 'start' : 'end',
        minMin: !tied && chance.percent(20) ? chance.int(1, 12) : 0,
      };
    });
    drafts.push({ step, needs, tie });
  });
  const washes = recipe ? chance.percent(85) : chance.percent(10);
  const segment: Segment = {
    ...UNSAID_SEGMENT,
    id,
    kind,
    title: `${recipe ? 'Dish' : 'Talk'} ${id}`,
    batches: { num: 1, den: 1 },
    eaten: recipe
      ? chance.percent(70)
        ? { num: 1, den: 1 }
        : { num: 1, den: 2 }
      : { num: 0, den: 1 },
    ate: { kind: 'share' },
    inFrame: null,
    outFrame: null,
    plannedS: chance.int(20, 240),
    recipe: recipe
      ? {
          id: `${id}-recipe`,
          title: `Dish ${id}`,
          lines: [],
          weighings: [],
          portions: [],
          method: '',
          cooking: null,
        }
      : null,
    steps: drafts.map((d) => d.step),
    perishables: [],
    shots: [],
    talkingPoints: [],
    spareTakes: 0,
    spareScope: 'whole',
    washUpS: washes ? chance.int(120, 1200) : 0,
  };
  return { segment, drafts };
}
