import { z } from 'zod';
import { MOST } from '#lib/episode/most';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { practicalRules, type FitRule } from '#lib/swap/practical-steps';
import type { RecipeFitWish } from '#lib/swap/recipe-fit';

const id = z.string().min(1).max(64);
const massMg = z.number().min(0).max(1_000_000_000);
/** No scale and no spoon goes in finer steps. */
export const LEAST_STEP_MG = 1;

const limitId = ({ relation, nutrient }: { relation: string; nutrient: string }): string =>
  `${relation}-${nutrient}`;

/** So many ingredients may change in one search; beyond, its address no longer fits a request. */
export const MOST_FREE = 60;
/** The most that is asked of a nutrient, in its unit. */
export const MOST_ASKED = 1_000_000;

/** What a person asks of a fit, beside what is proposed. */
export const fitAskedSchema = z.object({
  /** Targets of the episode that it keeps to. */
  targets: z.array(id).max(MOST.targets),
  /** Limits of their own, of the dish or of one of its portions. */
  limits: z
    .array(
      z.object({
        nutrient: z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]]),
        relation: z.enum(['atLeast', 'atMost']),
        amount: z.number().min(0).max(MOST_ASKED),
      }),
    )
    .refine(
      (all) => new Set(all.map(limitId)).size === all.length,
      'a nutrient has one least and one most',
    ),
  /** The part that these limits are of; null is the whole dish. */
  portionId: id.nullable(),
  /** The ingredients that may change; all others stay as they are. */
  lines: z
    .array(
      z.object({
        ...{ lineId: id, lowMg: massMg, highMg: massMg },
        stepMg: z.number().min(LEAST_STEP_MG).max(1_000_000_000).nullable(),
      }),
    )
    .max(MOST_FREE),
  /** Met whatever the range is. */
  strict: z.boolean(),
});
export type FitAsked = z.infer<typeof fitAskedSchema>;

/** What is asked for as long as nobody has said more: the targets of the episode, in practical steps. */
export function proposedFit(file: EpisodeFile, segmentId: string): FitAsked {
  const own = targetsFor(file, segmentId);
  return {
    targets: own.map(({ id: targetId }) => targetId),
    ...{ limits: [], portionId: null, strict: false },
    lines: practicalRules(file, segmentId).flatMap((rule) => {
      if (rule.kind === 'fixed') return [];
      const { lineId, lowMg, highMg, stepMg } = rule;
      return [{ lineId, lowMg, highMg, stepMg }];
    }),
  };
}

/** Targets of the episode that a dish has a say in. */
export function targetsFor({ episode }: EpisodeFile, segmentId: string): readonly Target[] {
  return episode.targets.filter((each) => each.segmentId === null || each.segmentId === segmentId);
}

/**
 * What is looked for. An ingredient that nobody spoke of, and one whose grams nobody knows, stays as it is.
 * @param seconds for each search
 */
export function wishOf(
  file: EpisodeFile,
  segmentId: string,
  asked: FitAsked,
  seconds: number,
): RecipeFitWish {
  const targets = targetsFor(file, segmentId).filter((each) => asked.targets.includes(each.id));
  const limits = asked.limits.map(({ nutrient, relation, amount }): Target => ({
    ...{ id: limitId({ relation, nutrient }), nutrient, relation, amount },
    ...{ segmentId, portionId: asked.portionId },
  }));
  const said = new Map(asked.lines.map((line) => [line.lineId, line]));
  const rules = practicalRules(file, segmentId).map((rule): FitRule => {
    const line = said.get(rule.lineId);
    if (rule.kind === 'fixed') return rule;
    if (!line) {
      return { lineId: rule.lineId, kind: 'fixed', why: 'it may not change' };
    }
    const { lowMg, highMg, stepMg } = line;
    const stepWords = stepMg === rule.stepMg ? rule.stepWords : `${(stepMg ?? 0) / 1000} g`;
    return { ...rule, lowMg, highMg, stepMg, stepWords };
  });
  const certainty = asked.strict ? 'range' : 'value';
  return { segmentId, targets: [...targets, ...limits], rules, certainty, seconds };
}
