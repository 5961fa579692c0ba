import { stems } from '#lib/claims/judge-beyond/words-around';
import type { Step } from '#lib/episode/schema';

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

const common = ({ title }: Step, around: ReadonlySet<string>) =>
  [...new Set(stems(title))].filter((stem) => around.has(stem)).length;
