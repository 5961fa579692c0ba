import type { Problem } from '#lib/result';
import { alsoProblems, idsOfOthers } from '#lib/episode/also-references';
import { recipesOf } from '#lib/episode/context';
import { editProblems } from '#lib/episode/edit-references';
import { publishProblems } from '#lib/episode/publish-references';
import { scopeKey } from '#lib/episode/said-scope';
import { recipeRing } from '#lib/episode/made-from';
import { recipeProblems, type Refer, type Say } from '#lib/episode/recipe-references';
import type { Recipe } from '#lib/episode/recipe-schema';
import type { EpisodeFile, Segment } from '#lib/episode/schema';

/**
 * Faults that a schema cannot see: ids that nothing has, ids given twice, ends before starts, other episodes of the day
 * that cannot be. Every fault is told, each with its path.
 */
export function referenceProblems(file: EpisodeFile): Problem[] {
  return [...ownProblems(file), ...alsoProblems(file, ownProblems)];
}

function ownProblems(file: EpisodeFile): Problem[] {
  const problems: Problem[] = [];
  const say = (path: string, code: string, message: string) => {
    problems.push({ path, code, message });
  };
  const known = knownIds(file, say);
  const refer = (path: string, what: string, set: ReadonlySet<string>, id: string | null) => {
    if (id !== null && !set.has(id)) say(path, 'unknown-id', `no ${what} has the id "${id}"`);
  };

  file.episode.segments.forEach((segment, index) => {
    segmentProblems(segment, `episode.segments[${index}]`, known, say, refer);
  });
  file.recipes.forEach((recipe, index) => {
    recipeProblems(recipe, `recipes[${index}]`, known, say, refer);
  });
  const ring = recipeRing([...known.recipes.values()]);
  if (ring) say('recipes', 'ring', `a recipe is made from itself: ${ring.join(' → ')}`);
  file.episode.links.forEach((link, index) => {
    const path = `episode.links[${index}]`;
    refer(`${path}.fromStepId`, 'step', known.steps, link.fromStepId);
    refer(`${path}.toStepId`, 'step', known.steps, link.toStepId);
    if (link.minLagS !== null && link.maxLagS !== null && link.minLagS > link.maxLagS) {
      say(
        path,
        'order',
        `at least ${link.minLagS} s and at most ${link.maxLagS} s cannot both hold`,
      );
    }
  });
  file.episode.targets.forEach((target, index) => {
    const { segmentId, portionId } = target;
    refer(`episode.targets[${index}].segmentId`, 'segment', known.segments, segmentId);
    const of = file.episode.segments.find(({ id }) => id === segmentId)?.recipe?.portions ?? [];
    const portions = new Set(of.map(({ id }) => id));
    refer(`episode.targets[${index}].portionId`, 'portion of that segment', portions, portionId);
  });
  file.stock.forEach((lot, index) => {
    refer(`stock[${index}].foodId`, 'food', known.foods, lot.foodId);
  });
  file.packs.forEach((pack, index) => {
    refer(`packs[${index}].foodId`, 'food', known.foods, pack.foodId);
  });
  shopProblems(file, known, say, refer);
  dayProblems(file, known, say, refer);
  saidProblems(file, known, say, refer);
  editProblems(file, say, refer);
  publishProblems(file, say, refer);
  return problems;
}

interface KnownIds {
  readonly foods: ReadonlySet<string>;
  readonly scales: ReadonlySet<string>;
  readonly ovens: ReadonlySet<string>;
  readonly segments: ReadonlySet<string>;
  readonly steps: ReadonlySet<string>;
  readonly recipes: ReadonlyMap<string, Recipe>;
}

function knownIds(file: EpisodeFile, say: Say): KnownIds {
  const unique = (path: string, rows: readonly { readonly id: string }[]): Set<string> => {
    const seen = new Set<string>();
    for (const { id } of rows) {
      if (seen.has(id)) say(path, 'duplicate-id', `the id "${id}" is given twice`);
      seen.add(id);
    }
    return seen;
  };
  const { segments, links } = file.episode;
  const recipes = recipesOf(file);
  unique('episode.links', links);
  unique('stock', file.stock);
  unique('packs', file.packs);
  unique('episode.segments[].recipe', recipes);
  // Figures tell sources of error apart by these ids: one given twice would be taken for one error.
  for (const part of ['lines', 'weighings', 'portions'] as const) {
    unique(
      `episode.segments[].recipe.${part}`,
      recipes.flatMap((recipe): readonly { readonly id: string }[] => recipe[part]),
    );
  }
  unique(
    'foods[].version',
    file.foods.map((food) => food.version),
  );
  file.foods.forEach((food, index) => unique(`foods[${index}].measures`, food.measures));
  return {
    foods: unique('foods', file.foods),
    scales: unique('kitchen.scales', file.kitchen.scales),
    ovens: unique('kitchen.ovens', file.kitchen.ovens),
    segments: unique('episode.segments', segments),
    steps: unique(
      'episode.segments[].steps',
      segments.flatMap((segment) => segment.steps),
    ),
    recipes: new Map(recipes.map((recipe) => [recipe.id, recipe])),
  };
}

function segmentProblems(
  segment: Segment,
  path: string,
  known: KnownIds,
  say: Say,
  refer: Refer,
): void {
  const { inFrame, outFrame, recipe } = segment;
  if ((segment.kind === 'recipe') !== (recipe !== null)) {
    say(
      `${path}.recipe`,
      'kind',
      `a ${segment.kind} segment ${recipe ? 'has no recipe' : 'needs one'}`,
    );
  }
  if (inFrame !== null && outFrame !== null && outFrame <= inFrame) {
    say(
      `${path}.outFrame`,
      'order',
      `ends at frame ${outFrame}, not after its start at ${inFrame}`,
    );
  }
  if (recipe) recipeProblems(recipe, `${path}.recipe`, known, say, refer);
  segment.steps.forEach((step, index) => {
    refer(`${path}.steps[${index}].oven.ovenId`, 'oven', known.ovens, step.oven?.ovenId ?? null);
  });
  segment.shots.forEach((shot, index) => {
    refer(`${path}.shots[${index}].stepId`, 'step', known.steps, shot.stepId);
  });
  segment.perishables.forEach((perishable, index) => {
    perishable.spans.forEach((span, position) => {
      const at = `${path}.perishables[${index}].spans[${position}]`;
      refer(`${at}.fromStepId`, 'step', known.steps, span.fromStepId);
      refer(`${at}.toStepId`, 'step', known.steps, span.toStepId);
    });
  });
}

function shopProblems(
  { packs, pantry, shops }: EpisodeFile,
  known: KnownIds,
  say: Say,
  refer: Refer,
) {
  const shopIds = new Set<string>();
  shops.forEach(({ id }, index) => {
    if (shopIds.has(id)) say(`shops[${index}].id`, 'duplicate-id', `the id "${id}" is given twice`);
    shopIds.add(id);
  });
  packs.forEach(({ prices }, index) => {
    prices.forEach(({ shopId }, nth) => {
      refer(`packs[${index}].prices[${nth}].shopId`, 'shop', shopIds, shopId);
    });
  });
  const about = new Set<string>();
  pantry.forEach(({ foodId }, index) => {
    const at = `pantry[${index}].foodId`;
    refer(at, 'food', known.foods, foodId);
    if (about.has(foodId)) say(at, 'duplicate', 'of each pantry food there is one word at most');
    about.add(foodId);
  });
}

function dayProblems(file: EpisodeFile, known: KnownIds, say: Say, refer: Refer): void {
  const others = idsOfOthers(file);
  const segments = new Set([...known.segments, ...others.segments]);
  const steps = new Set([...known.steps, ...others.steps]);
  file.day?.segments.forEach((segment, index) => {
    refer(`day.segments[${index}].segmentId`, 'segment', segments, segment.segmentId);
  });
  file.day?.pins.forEach((pin, index) => {
    refer(`day.pins[${index}].stepId`, 'step', steps, pin.stepId);
  });
  file.day?.appointments.forEach((appointment, index) => {
    if (appointment.endMin <= appointment.startMin) {
      say(`day.appointments[${index}].endMin`, 'order', 'ends before it starts');
    }
  });
}

function saidProblems(file: EpisodeFile, known: KnownIds, say: Say, refer: Refer): void {
  const scopes = new Set<string>();
  file.said.forEach(({ scope }, index) => {
    const at = `said[${index}].scope`;
    if (scope.kind !== 'day') refer(`${at}.segmentId`, 'segment', known.segments, scope.segmentId);
    const key = scopeKey(scope);
    if (scopes.has(key)) say(at, 'duplicate', 'is said twice: of each scope the last stands');
    scopes.add(key);
  });
  const photographed = recipesOf(file).some(({ lines }) => lines.some((line) => line.photographed));
  if (photographed && (file.day === null || file.kitchen.scales.length === 0)) {
    const message = 'a scale’s display is photographed on a filming day, on a scale of the kitchen';
    say('episode.segments[].recipe.lines', 'photographed', message);
  }
  if (file.said.length > 0 && file.day === null) {
    say('said', 'no-day', 'what was said in front of the camera was said on a filming day');
  }
}
