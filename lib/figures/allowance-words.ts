import type { Allowance, AllowanceSide } from '#lib/figures/allowance';
import { someOf } from '#lib/figures/print-figure';
import { rowStep } from '#lib/figures/breakdown-words';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printTo, settled } from '#lib/units/print';

/** What the law says of a label, and where; sources as in `allowance.ts`. */
const LAW: Readonly<Record<AllowanceSide, string>> = {
  atMost: 'A label may lawfully stand for up to 120 % of what it declares: 21 CFR 101.9(g)(5).',
  atLeast:
    'A label may lawfully stand for as little as 80 % of what it declares: 21 CFR 101.9(g)(4)(ii).',
};

/**
 * The allowance in sentences: the bound, what the law leaves open, the labels it rests on, and the law with its
 * place. The bound is rounded away from the figure, so that the sentence stays true.
 * @param of null where no US label is in the figure
 * @example allowanceWords({ side: 'atMost', bound: 240.2, … }, 'energyKcal')[0]
 *   // 'With every label at the end of what the law allows it could be as much as 240.3 kcal; downwards there is no limit in law.'
 */
export function allowanceWords(of: Allowance | null, nutrient: Nutrient): readonly string[] {
  if (of === null) {
    return [
      'No package label by US rules is in this number: 21 CFR 101.9(g) adds nothing to its range.',
    ];
  }
  const others =
    of.otherLabels.length > 0
      ? [`Counted as printed, since this law does not speak of them: ${someOf(of.otherLabels)}.`]
      : [];
  return [
    boundWords(of, nutrient),
    `The labels in it: ${someOf(of.labels)}.`,
    ...others,
    of.side === null ? 'The law: 21 CFR 101.9(g)(4) to (6).' : LAW[of.side],
  ];
}

function boundWords({ side, bound }: Allowance, nutrient: Nutrient): string {
  if (side === null) {
    return 'The law limits its labels on different sides or not at all, so it gives this number no bound.';
  }
  if (bound === null) {
    return 'Something is missing on the side that the law limits, so it gives this number no bound.';
  }
  const { unit } = NUTRIENTS[nutrient];
  const step = rowStep(nutrient);
  const steps = settled(bound / step);
  const reached = 'With every label at the end of what the law allows it could be as';
  return side === 'atMost'
    ? `${reached} much as ${printTo(Math.ceil(steps) * step, step)} ${unit}; downwards there is no limit in law.`
    : `${reached} little as ${printTo(Math.floor(steps) * step, step)} ${unit}; upwards there is no limit in law.`;
}
