import { ENGLISH } from '#lib/claims/english/english';
import { degreesIn, isUsualRounding } from '#lib/claims/judge-beyond/oven-table';
import { stems } from '#lib/claims/judge-beyond/words-around';
import type { Step } from '#lib/episode/step-schema';

/** Steps among which a statement’s own is, and whether the words around it name them. */
export interface ChosenSteps {
  readonly steps: readonly Step[];
  readonly named: boolean;
}

/**
 * The steps that the words around a statement speak of: those whose titles have most words in common with them; all of
 * them where none has any.
 * @example chooseSteps([bake, simmer], new Set(['bak'])).steps // [bake]
 */
export function chooseSteps(steps: readonly Step[], around: ReadonlySet<string>): ChosenSteps {
  const scored = steps.map((step) => ({ step, score: common(step, around) }));
  const best = scored.reduce((most, { score }) => Math.max(most, score), 0);
  return best === 0
    ? { steps, named: false }
    : { steps: scored.filter(({ score }) => score === best).map(({ step }) => step), named: true };
}

const kept = new WeakMap<Step, readonly string[]>();

function common(step: Step, around: ReadonlySet<string>): number {
  const own = kept.get(step) ?? [...new Set(stems(step.title))];
  kept.set(step, own);
  return own.filter((stem) => around.has(stem)).length;
}

/** UTF-16 units to either side of a time in which degrees say which step it is of. */
const BESIDE = 24;

/**
 * The steps at the oven that the words around a time speak of without a step’s name: those whose degrees stand right
 * beside it, else all of them where the oven is named; none where it is not, or where the words that are nearer to the
 * time tell of something else: 'while that is in the oven, boil the noodles for four minutes'.
 * @example chooseByOven([bakeAt160], { before: '', behind: ' at 160' }) // [bakeAt160]
 */
export function chooseByOven(
  steps: readonly Step[],
  { before, behind }: { readonly before: string; readonly behind: string },
): readonly Step[] {
  const { byOven, besideOven, nextClause } = ENGLISH.judging;
  const baked = steps.filter(({ oven }) => oven !== null);
  const after = behind.split(nextClause)[0] ?? '';
  const isBeside =
    lastAt(before, besideOven) > lastAt(before, byOven) || lastAt(after, besideOven) >= 0;
  if (isBeside && lastAt(after, byOven) < 0) return [];
  const near = `${before.slice(-BESIDE)} ${after.slice(0, BESIDE)}`;
  const numbers = [...near.matchAll(/(?<![\d.,])\d{3}(?![\d.,]*\d)/g)].map(([number]) =>
    Number(number),
  );
  const set = baked.filter(({ oven }) =>
    numbers.some((number) =>
      (['C', 'F'] as const).some((unit) => {
        const exact = degreesIn(oven?.milliC ?? 0, unit);
        return Math.abs(exact - number) < 0.5 || isUsualRounding(number, exact, unit);
      }),
    ),
  );
  if (set.length > 0) return set;
  return lastAt(before, byOven) >= 0 || lastAt(after, byOven) >= 0 ? baked : [];
}

/** Where a text has a pattern for the last time; -1 where it has it nowhere. */
const lastAt = (text: string, pattern: RegExp) => [...text.matchAll(pattern)].at(-1)?.index ?? -1;
