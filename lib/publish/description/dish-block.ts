import { ovenSettings } from '#lib/claims/judge-beyond/oven-settings';
import type { Dish } from '#lib/episode/context';
import type { DishPart } from '#lib/episode/publish-schema';
import type { Segment } from '#lib/episode/schema';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { BlockContext } from '#lib/publish/description/block';
import { numbersLine, openReason } from '#lib/publish/description/numbers-line';
import {
  heading,
  joined,
  lines,
  list,
  type Part,
  type Section,
} from '#lib/publish/document/document';
import { pastedParagraphs } from '#lib/publish/document/pasted-words';
import { ingredientText } from '#lib/publish/ingredient-text';
import { portionTitle } from '#lib/publish/portion-title';
import { printTo } from '#lib/units/print';
import { toFahrenheit } from '#lib/units/units';

/** Each dish in viewing order; one that is new since the lock is named, and its numbers follow. */
export function dishSections(context: BlockContext): readonly Section[] {
  const { publish, dishes } = context;
  const fresh = new Set(
    publish.changed?.dishes.flatMap(({ kind, segmentId }) => (kind === 'new' ? segmentId : [])),
  );
  const known = new Map(dishes.map((dish) => [dish.id, dish]));
  return publish.file.episode.segments.flatMap(({ id, title }: Segment): Section[] => {
    const dish = known.get(id);
    if (dish) return [dishSection(dish, context)];
    return fresh.has(id) ? [[...heading(2, title), ...lines('Its numbers follow.')]] : [];
  });
}

function dishSection(dish: Dish, context: BlockContext): Section {
  const parts = context.dishParts.flatMap((part) => PARTS[part](dish, context));
  return [...heading(2, dish.title), ...joined(parts)];
}

type DishPartOf = (dish: Dish, context: BlockContext) => readonly Part[];

const PARTS: Readonly<Record<DishPart, DishPartOf>> = {
  whole: wholePart,
  portions: portionsPart,
  per100g: per100gPart,
  ingredients: ingredientsPart,
  method: ({ recipe }) => lines(...pastedParagraphs(recipe.method).flat()),
  oven: ovenPart,
};

function wholePart({ id }: Dish, { publish }: BlockContext): Part[] {
  const { numbers, file } = publish;
  const scope: NumberScope = { kind: 'whole', segmentId: id };
  const reason = openReason(numbers, scope);
  return lines(
    `The whole dish: ${numbersLine(numbers, scope, file.episode.region)}`,
    reason === null ? '' : `Open: ${reason}`,
  );
}

function portionsPart({ id, recipe }: Dish, { publish, dishParts }: BlockContext): Part[] {
  const { numbers, file } = publish;
  const whole = openReason(numbers, { kind: 'whole', segmentId: id });
  const told = recipe.portions.map((portion) => {
    const scope: NumberScope = { kind: 'portion', portionId: portion.id };
    // What the whole dish has said need not be said again.
    const why = whole !== null && dishParts.includes('whole') ? null : openReason(numbers, scope);
    const how = portion.kind === 'byEye' ? ' (by eye)' : '';
    const line = `${portionTitle(portion)}${how}: ${numbersLine(numbers, scope, file.episode.region)}`;
    return why === null ? line : `${line} (${why})`;
  });
  return lines(...told);
}

/** Only where it is known: without a finished weight there is no such number. */
function per100gPart({ id }: Dish, { publish }: BlockContext): Part[] {
  const { numbers, figures, file } = publish;
  const has = figures.dishes.some(({ segmentId, per100g }) => segmentId === id && per100g !== null);
  const scope: NumberScope = { kind: 'per100g', segmentId: id };
  if (!has || openReason(numbers, scope) !== null) return [];
  return lines(`Per 100 g, finished: ${numbersLine(numbers, scope, file.episode.region)}`);
}

function ingredientsPart({ recipe }: Dish, { dishes, amounts }: BlockContext): Part[] {
  const titles = new Map(dishes.map((each) => [each.recipe.id, each.title]));
  return list(recipe.lines.map((line) => ingredientText(line, recipe.weighings, amounts, titles)));
}

/**
 * `Oven: 220 °C (428 °F), then 160 °C (320 °F)`, in the order of the steps; none where the method, which stands above
 * it, writes each of them with a setting of its own: '180 °C / 160 °C fan / gas 4'.
 */
function ovenPart({ steps, recipe }: Dish, { dishParts }: BlockContext): Part[] {
  const baked = steps.filter(({ oven }) => oven !== null);
  const degrees = baked.flatMap(({ oven }) => (oven ? [oven.milliC] : []));
  const written = (step: (typeof baked)[number]) =>
    recipe.method.includes(step.title) && ovenSettings(step, new Map()).both;
  if (dishParts.includes('method') && baked.every(written)) return [];
  const told = degrees
    .filter((milliC, index) => milliC !== degrees[index - 1])
    .map((milliC) => `${printTo(milliC / 1000, 1)} °C (${printTo(toFahrenheit(milliC), 1)} °F)`);
  return told.length === 0 ? [] : lines(`Oven: ${told.join(', then ')}`);
}
