import { amountContext, dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { applySwap } from '#lib/swap/apply-swap';
import { gramsOf } from '#lib/swap/counted-amount';

/** One ingredient whose amount changes. */
export interface FittedLine {
  readonly lineId: string;
  readonly text: string;
  readonly fromMg: number;
  readonly toMg: number;
}

/** A target before and after. */
export interface FittedTarget {
  readonly target: Target;
  readonly before: Figure | null;
  readonly after: Figure | null;
  readonly verdict: LimitVerdict;
}

/** Amounts put into the dish, as steps of a variant too. */
export interface Fitted {
  readonly lines: readonly FittedLine[];
  /** The sum of relative changes: 0.2 is a fifth of one ingredient. */
  readonly change: number;
  readonly steps: readonly SwapStep[];
  readonly after: EpisodeFile;
  readonly targets: readonly FittedTarget[];
}

/**
 * Amounts put into their dish, with what becomes of its targets.
 * @param found steps that change amounts of ingredients that the dish has
 */
export function toldFit(
  file: EpisodeFile,
  segmentId: string,
  targets: readonly Target[],
  { steps, change }: Pick<Fitted, 'steps' | 'change'>,
): Fitted {
  const applied = applySwap(file, { id: 'fit', segmentId, steps: [...steps] });
  if (!applied.ok) throw new Error('amounts of a dish can be put into it');
  const after = applied.value;
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const context = amountContext(file);
  const lines = steps.flatMap((step): FittedLine[] => {
    const line =
      step.kind === 'amount' ? dish?.recipe.lines.find(({ id }) => id === step.lineId) : null;
    if (step.kind !== 'amount' || !dish || !line) return [];
    const fromMg = gramsOf(line, dish.recipe, context)?.valueMg ?? 0;
    return [{ lineId: line.id, text: line.text, fromMg, toMg: step.massMg }];
  });
  return { lines, change, steps, after, targets: judged(file, after, targets) };
}

function judged(
  before: EpisodeFile,
  after: EpisodeFile,
  targets: readonly Target[],
): FittedTarget[] {
  const nutrients = [...new Set(targets.map(({ nutrient }) => nutrient))];
  const [was, becomes] = [episodeFigures(before, nutrients), episodeFigures(after, nutrients)];
  return targets.map((target) => {
    const [old, fresh] = [figureFor(was, target), figureFor(becomes, target)];
    const verdict = fresh ? judgeLimit(fresh, target.relation, target.amount) : 'unknown';
    return { target, before: old, after: fresh, verdict };
  });
}

function figureFor(figures: EpisodeFigures, target: Target): Figure | null {
  const { segmentId, portionId, nutrient } = target;
  if (segmentId === null) return figures.day[nutrient] ?? null;
  const dish = figures.dishes.find((each) => each.segmentId === segmentId);
  if (portionId === null) return dish?.whole[nutrient] ?? null;
  return dish?.portions.find((each) => each.portionId === portionId)?.figures[nutrient] ?? null;
}

/** The amounts of a dish as one text, by which a page sees that they are still those that it showed. */
export function amountsText(file: EpisodeFile, segmentId: string): string {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const context = amountContext(file);
  const amounts = dish?.recipe.lines.map((line) => [
    line.id,
    gramsOf(line, dish.recipe, context)?.valueMg ?? null,
  ]);
  return JSON.stringify(amounts ?? []);
}
