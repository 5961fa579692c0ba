import { amountContext, dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { episodeFigures, type EpisodeFigures } from '#lib/figures/episode-figures';
import type { Figure } from '#lib/figures/figure';
import { judgeLimit, type LimitVerdict } from '#lib/figures/judge-limit';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { applySwap, gramsOf } from '#lib/swap/apply-swap';
import { changeOf, fitAmounts, type FitAmount } from '#lib/swap/fit-amounts';
import { fitLimits, type Certainty } from '#lib/swap/fit-limits';
import { practicalRules, type FitRule } from '#lib/swap/practical-steps';

export interface RecipeFitWish {
  readonly segmentId: string;
  /** Those of the episode that are about the dish, its portions or the day, where left out. */
  readonly targets?: readonly Target[];
  /** By ingredient; practical steps where left out. */
  readonly rules?: readonly FitRule[];
  /** `value`: the numbers themselves; `range`: met whatever the range (MODEL D.2), by the hard bounds. */
  readonly certainty?: Certainty;
  readonly seconds?: number;
}

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

export type RecipeFit =
  /** Proven: nothing fits with less change. */
  | ({ readonly status: 'fits'; readonly proven: true } & Fitted)
  | {
      readonly status: 'clash';
      /** Targets that cannot be met together. */
      readonly clashing: readonly Target[];
      /** Whether no smaller set clashes; else only that none of these can be left out. */
      readonly smallest: boolean;
      readonly nearest: Fitted | null;
    }
  /** Not decided in the time: less change than `atLeast` will not do. */
  | { readonly status: 'stopped'; readonly atLeast: number | null };

/**
 * Amounts of a dish's ingredients that meet targets with the least change: the sum of relative changes, in practical
 * steps, of like ones that of later ingredients. The figures of the dish as it would be are told with it.
 * @returns problems where a target has a figure that is not known, or goes by grams of the finished dish, which change with it
 * @example recipeFit(file, { segmentId: 'soup' }) // lines [{ text: '200 g curd', fromMg: 200_000, toMg: 235_000 }], …
 */
export async function recipeFit(
  file: EpisodeFile,
  wish: RecipeFitWish,
): Promise<Result<RecipeFit>> {
  const { segmentId, certainty = 'value' } = wish;
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  if (!dish) return failed(problem('segmentId', 'no-dish', 'The dish is gone.'));
  const targets =
    wish.targets ??
    file.episode.targets.filter((each) => each.segmentId === null || each.segmentId === segmentId);
  if (targets.length === 0) {
    return failed(
      problem(
        'targets',
        'no-targets',
        'There is no target for this dish or the day: say what it should come to.',
      ),
    );
  }
  const context = amountContext(file);
  const byLine = new Map(
    (wish.rules ?? practicalRules(file, segmentId)).map((rule) => [rule.lineId, rule]),
  );
  const lines = dish.recipe.lines.flatMap((line) => {
    const rule = byLine.get(line.id);
    const startMg = gramsOf(line, dish.recipe, context)?.valueMg ?? null;
    return rule?.kind === 'free' && startMg !== null && !line.madeFrom
      ? [{ line, rule, startMg }]
      : [];
  });
  const problems = lines.flatMap(({ rule, line, startMg }): Problem[] => {
    const { lowMg, highMg, stepMg } = rule;
    const whole = stepMg === null || Math.ceil(lowMg / stepMg) <= Math.floor(highMg / stepMg);
    const stays = startMg >= lowMg && startMg <= highMg;
    if (lowMg <= highMg && (stepMg === null || stepMg > 0) && (whole || stays)) return [];
    return [
      problem(
        'rules',
        'no-step',
        `There is no whole step of ${rule.stepWords} between the bounds of ${line.text}.`,
      ),
    ];
  });
  const limits = fitLimits(file, {
    dish,
    targets,
    lines: lines.map(({ line, startMg, rule }) => ({ line, startMg, highMg: rule.highMg })),
    certainty,
  });
  if (!limits.ok || problems.length > 0) {
    const [first, ...others] = [...problems, ...(limits.ok ? [] : limits.problems)];
    if (first) return failed(first, ...others);
    throw new Error('a failure has a problem');
  }
  const amounts = lines.map(({ rule, startMg }): FitAmount => ({
    ...{ start: startMg, low: rule.lowMg, high: rule.highMg, step: rule.stepMg },
    against: startMg > 0 ? startMg : Math.max(1, rule.highMg),
  }));
  const { seconds } = wish;
  const fitted = await fitAmounts(
    amounts,
    limits.value.map(({ limit }) => limit),
    seconds === undefined ? {} : { seconds },
  );
  const told = (chosen: readonly number[]): Fitted => {
    const changed = lines.flatMap(({ line, startMg }, at): FittedLine[] => {
      const toMg = Math.round(chosen[at] ?? startMg);
      return toMg === startMg ? [] : [{ lineId: line.id, text: line.text, fromMg: startMg, toMg }];
    });
    const steps = changed.map(({ lineId, toMg }) => ({
      kind: 'amount' as const,
      lineId,
      massMg: toMg,
    }));
    const applied = applySwap(file, { id: 'fit', segmentId, steps });
    if (!applied.ok) throw new Error('amounts of a dish can be put into it');
    const after = applied.value;
    return {
      lines: changed,
      change: changeOf(amounts, chosen),
      steps,
      after,
      targets: judged(file, after, targets),
    };
  };
  if (fitted.status === 'stopped') return ok(fitted);
  if (fitted.status === 'fits')
    return ok({ status: 'fits', proven: true, ...told(fitted.amounts) });
  const { clashing, smallest, nearest } = fitted;
  const ids = new Set(clashing.map((at) => limits.value[at]?.targetId));
  return ok({
    status: 'clash',
    clashing: targets.filter(({ id }) => ids.has(id)),
    smallest,
    nearest: nearest && told(nearest),
  });
}

function problem(path: string, code: string, message: string): Problem {
  return { path, code, message };
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
