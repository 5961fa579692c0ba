import { SHOT_MOMENTS, type HouseShot, type ShotMoment } from '#lib/episode/kitchen-schema';
import type { Segment } from '#lib/episode/schema';
import type { Shot, Step } from '#lib/episode/step-schema';
import { MOST_SHOTS } from '#lib/episode/step-limits';
import { printRuntime } from '#lib/units/print';

/** A moment of a dish, on screen. */
export const MOMENT_WORDS: Readonly<Record<ShotMoment, string>> = {
  ingredientsRaw: 'ingredients, raw',
  onTheScale: 'on the scale',
  intoTheHeat: 'into the oven or pan',
  outOfTheHeat: 'out of the oven or pan',
  still: 'the plate, untouched',
  cutOpen: 'cut open',
  firstBite: 'the first bite',
  number: 'the number',
};

/** The moments to choose from, in the order in which they come. */
export const MOMENT_CHOICES: readonly { readonly value: ShotMoment; readonly words: string }[] =
  SHOT_MOMENTS.map((value) => ({ value, words: MOMENT_WORDS[value] }));

/** The shots that a kitchen without any is offered to begin with (common practice, no source). */
export const USUAL_HOUSE_SHOTS: readonly Omit<HouseShot, 'id'>[] = [
  { title: 'Ingredients, raw', moment: 'ingredientsRaw', framing: 'from above', lengthS: 5 },
  { title: 'Scale display', moment: 'onTheScale', framing: 'close', lengthS: 3 },
  { title: 'Into the heat', moment: 'intoTheHeat', framing: 'close', lengthS: 4 },
  {
    title: 'Still for the thumbnail',
    moment: 'still',
    framing: 'close, a little above',
    lengthS: 3,
  },
  { title: 'Cut open', moment: 'cutOpen', framing: 'close', lengthS: 4 },
  { title: 'First bite', moment: 'firstBite', framing: 'face', lengthS: 6 },
  { title: 'The number', moment: 'number', framing: 'face', lengthS: 8 },
];

/** A shot of every dish in one line: `'Cut open · close · 0:04'`, with its moment where the title does not say it. */
export function shotLine(shot: Omit<HouseShot, 'id'>): string {
  const moment = MOMENT_WORDS[shot.moment];
  const bare = (text: string) => text.toLowerCase().replace(/^the /, '');
  const said = bare(moment) === bare(shot.title);
  const length = shot.lengthS === 0 ? '' : printRuntime(shot.lengthS);
  return [shot.title, said ? '' : moment, shot.framing, length].filter(Boolean).join(' · ');
}

type DishSteps = readonly Pick<Step, 'id' | 'role' | 'oven' | 'burners' | 'applianceId'>[];

const isHeat = (step: DishSteps[number]): boolean =>
  step.oven !== null || step.burners > 0 || step.applianceId !== null;
const isBite = ({ role }: DishSteps[number]): boolean => role === 'taste' || role === 'eat';

/**
 * The step of a dish during which a moment comes, by the order in which its steps are written; null where it has
 * no such step. What is shown hot and whole comes after the last heat and before the first bite.
 * `stepAt('cutOpen', steps)` → the id of the first tasting, else of the meal.
 */
export function stepAt(moment: ShotMoment, steps: DishSteps): string | null {
  switch (moment) {
    case 'ingredientsRaw':
    case 'onTheScale':
      return steps.find(({ role }) => role === 'prep')?.id ?? null;
    case 'intoTheHeat':
      return steps.find(isHeat)?.id ?? null;
    case 'outOfTheHeat':
    case 'still':
      return shownWhole(moment, steps);
    case 'cutOpen':
    case 'firstBite':
      return (steps.find(({ role }) => role === 'taste') ?? steps.find(isBite))?.id ?? null;
    case 'number':
      return steps.findLast((step) => isBite(step) || step.role === 'talk')?.id ?? null;
  }
}

function shownWhole(moment: 'outOfTheHeat' | 'still', steps: DishSteps): string | null {
  const bite = steps.findIndex(isBite);
  const whole = bite < 0 ? steps : steps.slice(0, bite);
  const lastHeat = whole.findLastIndex(isHeat);
  if (moment === 'outOfTheHeat' && lastHeat < 0) return null;
  const shoots = whole.slice(lastHeat + 1).filter(({ role }) => role === 'shoot');
  const shoot = moment === 'still' ? shoots.at(-1) : shoots[0];
  const next = lastHeat < 0 ? undefined : steps[lastHeat + 1];
  return (shoot ?? next)?.id ?? null;
}

const sameTitle = (title: string): string => title.trim().toLowerCase();

/**
 * The shots of every dish that one dish does not have yet, each with the step at which it is got, in the order of
 * the kitchen's list. A shot that has the same title already, in whatever case, is left as it is.
 * Nothing for a segment that is no dish.
 */
export function houseShotsToAdd(
  segment: Pick<Segment, 'kind' | 'steps' | 'shots'>,
  houseShots: readonly HouseShot[],
): Omit<Shot, 'id'>[] {
  if (segment.kind !== 'recipe') return [];
  const has = new Set(segment.shots.map(({ title }) => sameTitle(title)));
  const missing = houseShots.filter(({ title }) => {
    const isNew = !has.has(sameTitle(title));
    has.add(sameTitle(title));
    return isNew;
  });
  return missing
    .slice(0, Math.max(0, MOST_SHOTS - segment.shots.length))
    .map(({ title, moment, framing, lengthS }) => {
      return { title, stepId: stepAt(moment, segment.steps), framing, lengthS };
    });
}
