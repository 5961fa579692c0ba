import type { RecipeLine } from '#lib/episode/recipe-schema';
import { instantText } from '#lib/store/from-rows';
import type { DayTree, EpisodeTree, RecipeTree, SegmentTree } from '#lib/store/load';

/** What is there: a row may point at one that was removed, and is then left out or loses the pointer. */
interface Present {
  readonly segments: ReadonlySet<string>;
  readonly steps: ReadonlySet<string>;
  readonly lines: ReadonlySet<string>;
  readonly foods: ReadonlySet<string>;
  readonly ovens: ReadonlySet<string>;
  readonly appliances: ReadonlySet<string>;
  /** The names of each recipe's portions. */
  readonly portions: ReadonlyMap<string, ReadonlySet<string>>;
  /** Ingredients with a photo of a display whose number is not typed yet. */
  readonly photographed: ReadonlyMap<string, NonNullable<RecipeLine['photographed']>>;
}

/** What of a kitchen steps may name. */
interface KitchenPlaces {
  readonly ovens: readonly { readonly id: string }[];
  readonly appliances: readonly { readonly id: string }[];
}

export function presentIn(
  episode: Pick<EpisodeTree, 'segments'>,
  recipes: readonly RecipeTree[],
  foods: readonly { readonly id: string }[],
  kitchen: KitchenPlaces,
  photographed: Present['photographed'],
): Present {
  const ids = (rows: readonly { readonly id: string }[]) => new Set(rows.map((row) => row.id));
  const all = [...episode.segments.flatMap((segment) => recipeOf(segment) ?? []), ...recipes];
  return {
    photographed,
    segments: ids(episode.segments),
    steps: ids(episode.segments.flatMap((segment) => segment.steps)),
    lines: ids(all.flatMap(({ lines }) => lines)),
    foods: ids(foods),
    ovens: ids(kitchen.ovens),
    appliances: ids(kitchen.appliances),
    portions: new Map(
      all.map(({ id, portions }) => [id, new Set(portions.map(({ name }) => name))]),
    ),
  };
}

/** A segment's recipe, unless that was removed. */
export function recipeOf(segment: SegmentTree): RecipeTree | null {
  return segment.recipe?.deletedAt === null ? segment.recipe : null;
}

/** An episode's rows as plain data, still to be checked by `episodeSchema`. */
export function episodeFrom(episode: EpisodeTree, present: Present) {
  const { rateNum, rateDen, anythingElseKind, anythingElseWhat } = episode;
  return {
    ...episode,
    rate: { num: rateNum, den: rateDen },
    anythingElse:
      anythingElseKind === null ? null : { kind: anythingElseKind, what: anythingElseWhat },
    targets: episode.targets.filter(({ segmentId, portionId }) => {
      const segment = episode.segments.find(({ id }) => id === segmentId);
      const portions = (segment && recipeOf(segment)?.portions) ?? [];
      return (
        (segmentId === null || segment !== undefined) &&
        (portionId === null || portions.some(({ id }) => id === portionId))
      );
    }),
    links: tiesWithin(episode.links, present),
    segments: episode.segments.map((segment) => segmentFrom(segment, present)),
  };
}

/** Ties whose two steps are there. */
export function tiesWithin<T extends Parameters<typeof bothThere>[0]>(
  links: readonly T[],
  present: Present,
): T[] {
  return links.filter((link) => bothThere(link, present));
}

function bothThere(
  link: { readonly fromStepId: string; readonly toStepId: string },
  { steps }: Present,
): boolean {
  return steps.has(link.fromStepId) && steps.has(link.toStepId);
}

function kept(id: string | null, there: ReadonlySet<string>): string | null {
  return id !== null && there.has(id) ? id : null;
}

/** A segment's rows as plain data. */
export function segmentFrom(segment: SegmentTree, present: Present) {
  const recipe = recipeOf(segment);
  return {
    ...segment,
    batches: { num: segment.batchesNum, den: segment.batchesDen },
    eaten: { num: segment.eatenNum, den: segment.eatenDen },
    ate: {
      kind: segment.ateKind,
      permille: segment.atePermille,
      lowMg: segment.ateLowMg,
      valueMg: segment.ateMg,
      highMg: segment.ateHighMg,
    },
    claims: claimsFrom(segment),
    recipe: recipe && recipeFrom(recipe, present),
    steps: segment.steps.map((step) => ({
      ...step,
      choose:
        step.chooseMinS === null || step.chooseMaxS === null
          ? null
          : { minS: step.chooseMinS, maxS: step.chooseMaxS },
      oven:
        step.ovenMilliC === null
          ? null
          : { ovenId: kept(step.ovenId, present.ovens), milliC: step.ovenMilliC },
      applianceId: kept(step.applianceId, present.appliances),
    })),
    perishables: segment.perishables.map((perishable) => ({
      ...perishable,
      spans: perishable.spans.filter((span) => bothThere(span, present)),
    })),
    shots: segment.shots.map((shot) => ({ ...shot, stepId: kept(shot.stepId, present.steps) })),
  };
}

/** Null where nobody said any of it. */
function claimsFrom({ proteinPermille, raccMg, claimsMeal }: SegmentTree) {
  const unsaid = proteinPermille === null && raccMg === null && claimsMeal === null;
  return unsaid ? null : { proteinPermille, raccMg, meal: claimsMeal ?? false };
}

/** A recipe's rows as plain data. */
export function recipeFrom(recipe: RecipeTree, present: Present) {
  const { moisturePermille, fatPermille, cookingSpreadPermille, cookingSource } = recipe;
  const readings = new Set(recipe.weighings.map(({ id }) => id));
  return {
    ...recipe,
    cooking:
      cookingSource === null
        ? null
        : {
            moisturePermille,
            fatPermille,
            spreadPermille: cookingSpreadPermille,
            source: cookingSource,
          },
    lines: recipe.lines.map((line) => lineFrom(line, present)),
    weighings: recipe.weighings.map((weighing) => ({
      ...weighing,
      at: instantText(weighing.at),
      afterId: kept(weighing.afterId, readings),
      shares: weighing.shares
        .filter((share) => present.lines.has(share.lineId))
        .map(({ lineId, num, den }) => ({ lineId, share: { num, den } })),
    })),
    portions: recipe.portions.map((portion) => ({
      ...portion,
      of: portion.ofCount,
      share: { num: portion.shareNum, den: portion.shareDen },
    })),
  };
}

function lineFrom(line: RecipeTree['lines'][number], present: Present) {
  const { lowNum, lowDen, highNum, highDen } = line;
  return {
    ...line,
    foodId: kept(line.foodId, present.foods),
    orFoodId: kept(line.orFoodId, present.foods),
    quantity:
      lowNum === null
        ? null
        : { low: { num: lowNum, den: lowDen }, high: { num: highNum, den: highDen } },
    planned:
      line.plannedMg === null
        ? null
        : { lowMg: line.plannedLowMg, valueMg: line.plannedMg, highMg: line.plannedHighMg },
    leftBehind: {
      kind: line.leftKind,
      lowMg: line.leftLowMg,
      valueMg: line.leftMg,
      highMg: line.leftHighMg,
      where: line.leftWhere,
      made: line.leftMade,
    },
    bounded: line.bounded ?? [],
    photographed: present.photographed.get(line.id) ?? null,
    ...madeFrom(line, present),
  };
}

/**
 * What an ingredient is made from, if that is still there. An amount in portions that were taken out says nothing
 * any more, and must not come to mean another portion.
 */
function madeFrom(line: RecipeTree['lines'][number], present: Present) {
  const { madeFromId, madeFromRev, unit, measureName } = line;
  const portions = present.portions.get(madeFromId ?? '');
  if (madeFromId === null || !portions) return { madeFrom: null };
  const made = { madeFrom: { recipeId: madeFromId, rev: madeFromRev ?? 1 } };
  const lost = unit === 'portion' && measureName !== null && !portions.has(measureName);
  return lost ? { ...made, quantity: null, unit: null, measureName: null } : made;
}

/** A day as far as it concerns this episode and the others that are told of with it. */
export function dayFrom(
  day: DayTree,
  present: Pick<Present, 'segments' | 'steps'>,
  others: readonly SegmentTree[] = [],
) {
  const segments = new Set(others.map(({ id }) => id));
  const steps = new Set(others.flatMap((segment) => segment.steps.map(({ id }) => id)));
  return {
    ...day,
    segments: day.segments.filter(
      ({ segmentId }) => present.segments.has(segmentId) || segments.has(segmentId),
    ),
    pins: day.pins.filter(({ stepId }) => present.steps.has(stepId) || steps.has(stepId)),
  };
}
