import { amountContext, dishesOf } from '#lib/episode/context';
import type { SwapStep } from '#lib/episode/publish-schema';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { failed, ok, type Problem, type Result } from '#lib/result';
import { gramsOf } from '#lib/swap/counted-amount';
import { changeOf, fitAmounts, type FitAmount } from '#lib/swap/fit-amounts';
import { fitLimits, type Certainty } from '#lib/swap/fit-limits';
import { practicalRules, type FitRule } from '#lib/swap/practical-steps';
import { toldFit, type Fitted } from '#lib/swap/told-fit';

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

/** Amounts that were found, as steps of a swap. */
export interface FitSteps {
  readonly steps: readonly SwapStep[];
  /** The sum of relative changes: 0.2 is a fifth of one ingredient. */
  readonly change: number;
}

/** What a search found, as plain data that a thread can send. */
export type FitAnswer =
  | ({ readonly status: 'fits' } & FitSteps)
  | {
      readonly status: 'clash';
      /** Ids of the targets that cannot be met together. */
      readonly clashing: readonly string[];
      readonly smallest: boolean;
      readonly nearest: FitSteps | null;
    }
  /** Not decided in the time: less change than `atLeast` will not do. */
  | { readonly status: 'stopped'; readonly atLeast: number | null };

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
  const found = await fitSteps(file, wish);
  return found.ok ? ok(tellFit(file, wish, found.value)) : found;
}

/** An answer with the figures of the dish as it would be. */
export function tellFit(file: EpisodeFile, wish: RecipeFitWish, answer: FitAnswer): RecipeFit {
  const targets = targetsOf(file, wish);
  const told = (found: FitSteps): Fitted => toldFit(file, wish.segmentId, targets, found);
  if (answer.status === 'stopped') return answer;
  if (answer.status === 'fits') return { status: 'fits', proven: true, ...told(answer) };
  const { smallest, nearest } = answer;
  return {
    status: 'clash',
    clashing: targets.filter(({ id }) => answer.clashing.includes(id)),
    smallest,
    nearest: nearest && told(nearest),
  };
}

/** The targets that a wish is about: those of the episode for the dish and the day, where it names none. */
function targetsOf({ episode }: EpisodeFile, { targets, segmentId }: RecipeFitWish) {
  const of = (each: Target) => each.segmentId === null || each.segmentId === segmentId;
  return targets ?? episode.targets.filter(of);
}

/** The search alone, without the figures. */
export async function fitSteps(file: EpisodeFile, wish: RecipeFitWish): Promise<Result<FitAnswer>> {
  const { segmentId, certainty = 'value' } = wish;
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  if (!dish) return failed(problem('segmentId', 'no-dish', 'The dish is gone.'));
  const targets = targetsOf(file, wish);
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
        `rules.${line.id}`,
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
  const found = (chosen: readonly number[]): FitSteps => ({
    steps: lines.flatMap(({ line, startMg }, at) => {
      const massMg = Math.round(chosen[at] ?? startMg);
      return massMg === startMg ? [] : [{ kind: 'amount' as const, lineId: line.id, massMg }];
    }),
    change: changeOf(amounts, chosen),
  });
  if (fitted.status === 'stopped') return ok(fitted);
  if (fitted.status === 'fits') return ok({ status: 'fits', ...found(fitted.amounts) });
  const { clashing, smallest, nearest } = fitted;
  const ids = clashing.flatMap((at) => limits.value[at]?.targetId ?? []);
  return ok({
    status: 'clash',
    clashing: [...new Set(ids)],
    smallest,
    nearest: nearest && found(nearest),
  });
}

function problem(path: string, code: string, message: string): Problem {
  return { path, code, message };
}
