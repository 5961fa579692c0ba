import type { FoodVersion, RoundingRule } from '#lib/foods/food';
import { amountRange } from '#lib/foods/label-column';
import { canBePrinted, labelInterval, servingInterval } from '#lib/foods/label-rounding';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { readCell } from '#lib/foods/read-cell';
import { scaled } from '#lib/units/interval';
import { unclearNumber } from '#lib/units/printed';

/** What a typed value says, for the line beside its field. */
export interface StandsFor {
  /** `blank`: not on the label; `unread`: no value; `offRule`: no panel of this kind prints it. */
  readonly kind: 'blank' | 'range' | 'offRule' | 'unread';
  readonly words: string;
}

const PANELS = { us: 'US panel', eu: 'EU panel', asPrinted: 'panel' } as const;

/**
 * What a value as typed stands for, in words: the true amounts that its rounding rule maps to it.
 * `standsFor('us', 'fat', '3')` → "stands for 2.75–3.25 g"; `standsFor('us', 'energyKcal', '50')` →
 * "stands for 47.5–55 kcal"; `standsFor('us', 'fibre', '<1')` → "stands for 0–1 g"; an empty text →
 * "not on the label". Rules and sources: `rounding-rules.ts`.
 */
export function standsFor(rule: RoundingRule, nutrient: Nutrient, typed: string): StandsFor {
  const { unit } = NUTRIENTS[nutrient];
  const cell = readCell(typed, nutrient);
  if (!cell)
    return {
      kind: 'unread',
      words: `not read: ${unclearNumber(typed) ?? `write ${unit} as 0, 2.5, <1 or trace`}`,
    };
  const interval = labelInterval(rule, nutrient, cell);
  if (!interval) return { kind: 'blank', words: 'not on the label' };
  if (cell.kind === 'trace') return { kind: 'range', words: `a trace, taken as 0 ${unit}` };
  const range = amountRange(interval, unit);
  if (canBePrinted(rule, nutrient, cell)) return { kind: 'range', words: `stands for ${range}` };
  return { kind: 'offRule', words: `on no ${PANELS[rule]}; taken as ${range}` };
}

/** What a label's serving stands for, as typed; empty where no grams are. `'a serving stands for 59.5–60.5 g'` */
export function servingStandsFor(version: FoodVersion): string {
  const mass = servingInterval(version);
  return mass ? `a serving stands for ${amountRange(scaled(mass, 1e-3), 'g')}` : '';
}
