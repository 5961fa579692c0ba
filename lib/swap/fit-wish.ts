import { z } from 'zod';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { practicalRules, type FitRule } from '#lib/swap/practical-steps';
import type { RecipeFitWish } from '#lib/swap/recipe-fit';

const id = z.string().min(1).max(64);
const massMg = z.number().min(0).max(1_000_000_000);

/** What a person asks of a fit, beside what is proposed. */
export const fitAskedSchema = z.object({
  /** Targets of the episode that it keeps to. */
  targets: z.array(id).max(50),
  /** Limits of their own, of the dish or of one of its portions. */
  limits: z
    .array(
      z.object({
        nutrient: z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]]),
        relation: z.enum(['atLeast', 'atMost']),
        amount: z.number().min(0).max(1_000_000),
      }),
    )
    .max(60),
  /** The part that these limits are of; null is the whole dish. */
  portionId: id.nullable(),
  lines: z
    .array(
      z.discriminatedUnion('kind', [
        z.object({ kind: z.literal('fixed'), lineId: id }),
        z.object({
          ...{ kind: z.literal('free'), lineId: id, lowMg: massMg, highMg: massMg },
          stepMg: z.number().positive().max(1_000_000_000).nullable(),
        }),
      ]),
    )
    .max(200),
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
    lines: practicalRules(file, segmentId).map((rule) =>
      rule.kind === 'fixed'
        ? { kind: 'fixed', lineId: rule.lineId }
        : {
            ...{ kind: 'free', lineId: rule.lineId, lowMg: rule.lowMg },
            ...{ highMg: rule.highMg, stepMg: rule.stepMg },
          },
    ),
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
    ...{ id: `${relation}-${nutrient}`, nutrient, relation, amount },
    ...{ segmentId, portionId: asked.portionId },
  }));
  const said = new Map(asked.lines.map((line) => [line.lineId, line]));
  const rules = practicalRules(file, segmentId).map((rule): FitRule => {
    const line = said.get(rule.lineId);
    if (rule.kind === 'fixed') return rule;
    if (line?.kind !== 'free') {
      return { lineId: rule.lineId, kind: 'fixed', why: 'it may not change' };
    }
    const { lowMg, highMg, stepMg } = line;
    const stepWords = stepMg === rule.stepMg ? rule.stepWords : `${(stepMg ?? 0) / 1000} g`;
    return { ...rule, lowMg, highMg, stepMg, stepWords };
  });
  const certainty = asked.strict ? 'range' : 'value';
  return { segmentId, targets: [...targets, ...limits], rules, certainty, seconds };
}
