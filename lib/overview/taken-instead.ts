import type { EpisodeFile, Target } from '#lib/episode/schema';
import { dishChanges, type DishChange } from '#lib/figures/dish-changes';
import { episodeFigures } from '#lib/figures/episode-figures';
import { judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { LIMIT_WORDS, verdictWords } from '#lib/figures/limit-words';
import { printFigure } from '#lib/figures/print-figure';
import { figuresFor } from '#lib/figures/published-numbers';
import type { Food } from '#lib/foods/food';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import {
  SHELF_NUTRIENTS,
  shelfLabelFaults,
  shelfVersion,
  type ShelfLabel,
} from '#lib/foods/shelf-label';

/** A target of an episode before and after, where it is about something that the change moves. */
export interface TargetChange {
  readonly targetId: string;
  readonly words: string;
  readonly before: LimitVerdict;
  readonly after: LimitVerdict;
  /** What the number after says of it, with the number. */
  readonly told: string;
}

export interface TakenInstead {
  readonly episodeId: string;
  readonly title: string;
  readonly dishes: readonly DishChange[];
  readonly targets: readonly TargetChange[];
}

/**
 * What taking something else does to the dishes of a list and to their targets, by the few values that were typed; what
 * was not typed is not told, for nobody looked at it. The amounts stay those of the recipe, and where a recipe says
 * cups or pieces, what they weigh is that of the food that was not there.
 * @param files the episodes that are bought for
 * @param foodId the food that was not there
 * @returns episodes with at least one dish that takes it; empty where no value was typed
 * @example takenInstead([file], cheese.id, { basis: 'per100g', servingMg: null, values: { protein: '18' } })
 */
export function takenInstead(
  files: readonly EpisodeFile[],
  foodId: string,
  label: ShelfLabel,
): readonly TakenInstead[] {
  const typed = SHELF_NUTRIENTS.filter((nutrient) => (label.values[nutrient] ?? '').trim() !== '');
  if (typed.length === 0 || Object.keys(shelfLabelFaults(label)).length > 0) return [];
  return files.flatMap((file): TakenInstead[] => {
    const food = file.foods.find(({ id }) => id === foodId);
    if (!food) return [];
    const other = asLabelled(food, label, file.episode.region);
    const after = { ...file, foods: file.foods.map((each) => (each === food ? other : each)) };
    const dishes = dishChanges(file, after).flatMap((dish): DishChange[] => {
      const numbers = dish.numbers.filter(({ nutrient }) => isTyped(nutrient, typed));
      return numbers.length === 0 ? [] : [{ ...dish, numbers }];
    });
    const targets = targetChanges(file, after, typed);
    const { id, title } = file.episode;
    return dishes.length === 0 && targets.length === 0
      ? []
      : [{ episodeId: id, title, dishes, targets }];
  });
}

const isTyped = (nutrient: Nutrient, typed: readonly Nutrient[]) => typed.includes(nutrient);

/** The food with what another label says; how it is measured and cooked stays. */
function asLabelled(food: Food, label: ShelfLabel, region: 'US' | 'EU'): Food {
  const { version } = food;
  const source = { source: 'package label', release: '', sourceNo: '' };
  const of = shelfVersion(label, region);
  return {
    ...food,
    kind: 'label',
    version: { ...version, ...of, ...source, id: `${version.id}-instead`, factors: null },
  };
}

function targetChanges(
  before: EpisodeFile,
  after: EpisodeFile,
  typed: readonly Nutrient[],
): readonly TargetChange[] {
  const targets = before.episode.targets.filter(({ nutrient }) => isTyped(nutrient, typed));
  const [was, becomes] = [episodeFigures(before), episodeFigures(after)];
  return targets.flatMap((target): TargetChange[] => {
    const [old, fresh] = [was, becomes].map(
      (all) => figuresFor(all, scopeOf(target))?.[target.nutrient],
    );
    if (!old || !fresh) return [];
    const { relation, amount } = target;
    const verdict = judgeLimit(fresh, relation, amount);
    const { text, unit } = printFigure(fresh);
    return [
      {
        targetId: target.id,
        words: wordsOf(target, before),
        before: judgeLimit(old, relation, amount),
        after: verdict,
        told: `${text} ${unit}, ${verdictWords(verdict, fresh)}`,
      },
    ];
  });
}

function scopeOf({ segmentId, portionId }: Target) {
  if (segmentId === null) return { kind: 'day' } as const;
  if (portionId === null) return { kind: 'whole', segmentId } as const;
  return { kind: 'portion', segmentId, portionId } as const;
}

function wordsOf({ segmentId, portionId, nutrient, relation, amount }: Target, file: EpisodeFile) {
  const dish = file.episode.segments.find(({ id }) => id === segmentId)?.title ?? 'all dishes';
  const { unit, label } = NUTRIENTS[nutrient];
  const of = portionId === null ? dish : `${dish}, a portion`;
  return `${of}: ${LIMIT_WORDS[relation]} ${amount} ${unit} ${label}`;
}
