import type { Oven } from '#lib/episode/kitchen-schema';
import type { DayFacts, DayStep } from '#lib/shoot/day-facts';

/** So many ways to share steps among ovens are tried at most. */
const MOST_CHOICES = 6;

/** Which oven each oven step uses, by step id. */
export type OvenChoice = ReadonlyMap<string, string>;

/** An oven step that several ovens could take, by their ids. */
export interface OpenOvenStep {
  readonly entry: DayStep;
  readonly fits: readonly string[];
}

/**
 * Which oven steps have their oven, and which are open. A step that names an oven gets it; the others go
 * to any that gets hot enough and has racks enough, or to any at all where none does.
 *
 * A step that names an oven the kitchen lacks, or that needs one where there is none, gets none.
 */
export function ovenSteps(facts: DayFacts): {
  readonly fixed: OvenChoice;
  readonly open: readonly OpenOvenStep[];
} {
  const fixed = new Map<string, string>();
  const open: OpenOvenStep[] = [];
  for (const entry of facts.steps) {
    const { step } = entry;
    if (step.oven === null) continue;
    const named = step.oven.ovenId;
    if (named !== null) {
      if (facts.ovens.some((oven) => oven.id === named)) fixed.set(step.id, named);
      continue;
    }
    const { milliC } = step.oven;
    const hot = orAll(facts.ovens, (oven) => reaches(oven, milliC));
    const fits = orAll(hot, (oven) => oven.racks >= step.racks).map((oven) => oven.id);
    const [only] = fits;
    if (only !== undefined && fits.length === 1) fixed.set(step.id, only);
    else if (only !== undefined) open.push({ entry, fits });
  }
  return { fixed, open };
}

/** Whether an oven gets so hot; one of which nobody said how hot it gets is taken to. */
export function reaches({ mostMilliC }: Pick<Oven, 'mostMilliC'>, milliC: number): boolean {
  return mostMilliC === null || milliC <= mostMilliC;
}

/** Those for which something holds; all where it holds for none. */
function orAll<T>(all: readonly T[], holds: (one: T) => boolean): readonly T[] {
  const some = all.filter(holds);
  return some.length > 0 ? some : all;
}

/**
 * Ways to give each open oven step an oven: by temperature (one oven, one temperature, the load shared), all
 * to one, by turns, then by chance. One way only where there is nothing to choose.
 */
export function ovenChoices(facts: DayFacts, random: () => number): OvenChoice[] {
  const { fixed, open } = ovenSteps(facts);
  if (open.length === 0) return [fixed];
  const choose = (pick: (fits: readonly string[], entry: DayStep, index: number) => string) => {
    const choice = new Map(fixed);
    open.forEach(({ entry, fits }, index) => choice.set(entry.step.id, pick(fits, entry, index)));
    return choice;
  };
  const nth = (fits: readonly string[], index: number): string =>
    fits[index % fits.length] ?? fits[0] ?? '';
  const choices = [
    byTemperature(facts, fixed, open),
    choose((fits, entry) => nth(fits, entry.order)),
    choose((fits) => nth(fits, 0)),
    choose((fits, _entry, index) => nth(fits, index)),
  ];
  while (choices.length < MOST_CHOICES) {
    choices.push(choose((fits) => nth(fits, Math.floor(random() * fits.length))));
  }
  const seen = new Set<string>();
  return choices.filter((choice) => {
    const key = [...choice].sort().join(' ');
    return !seen.has(key) && seen.add(key);
  });
}

function byTemperature(
  facts: DayFacts,
  fixed: OvenChoice,
  open: readonly OpenOvenStep[],
): OvenChoice {
  const choice = new Map(fixed);
  const load = new Map<string, number>();
  const temperatures = new Map<string, Set<number>>();
  const occupy = (ovenId: string, entry: DayStep): void => {
    load.set(ovenId, (load.get(ovenId) ?? 0) + entry.step.usualS);
    const known = temperatures.get(ovenId) ?? new Set<number>();
    if (entry.step.oven !== null) known.add(entry.step.oven.milliC);
    temperatures.set(ovenId, known);
  };
  for (const [stepId, ovenId] of fixed) {
    const entry = facts.stepById.get(stepId);
    if (entry !== undefined) occupy(ovenId, entry);
  }
  for (const { entry, fits } of open) {
    const milliC = entry.step.oven?.milliC ?? 0;
    const cost = (ovenId: string): number => {
      const known = temperatures.get(ovenId);
      const strange = known !== undefined && known.size > 0 && !known.has(milliC);
      return (load.get(ovenId) ?? 0) + (strange ? 1_000_000 : 0);
    };
    const best = fits.reduce((least, ovenId) => (cost(ovenId) < cost(least) ? ovenId : least));
    choice.set(entry.step.id, best);
    occupy(best, entry);
  }
  return choice;
}
