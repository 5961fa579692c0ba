import { amountContext, dishesOf } from '#lib/episode/context';
import type { EpisodeFile } from '#lib/episode/schema';
import { gramsOf } from '#lib/swap/counted-amount';
import type { FitAsked } from '#lib/swap/fit-wish';
import { practicalRules, stepChoices, type StepChoice } from '#lib/swap/practical-steps';
import { printGrams } from '#lib/units/print';
import { gramsText } from '#lib/units/read-quantity';

/** An ingredient in the form of a fit: what it may become, as text. */
export interface FitRow {
  readonly lineId: string;
  readonly text: string;
  /** Grams as they are. */
  readonly now: string | null;
  /** Why it cannot change; null where it can. */
  readonly why: string | null;
  readonly fixed: boolean;
  readonly low: string;
  readonly high: string;
  readonly stepMg: number | null;
  readonly steps: readonly StepChoice[];
}

/** The ingredients of a dish as the form of its fit begins with them. */
export function fitRows(file: EpisodeFile, segmentId: string, asked: FitAsked): readonly FitRow[] {
  const dish = dishesOf(file.episode.segments).find(({ id }) => id === segmentId);
  const context = amountContext(file);
  const said = new Map(asked.lines.map((line) => [line.lineId, line]));
  return practicalRules(file, segmentId).flatMap((rule): FitRow[] => {
    const line = dish?.recipe.lines.find(({ id }) => id === rule.lineId);
    if (!line || !dish) return [];
    const grams = gramsOf(line, dish.recipe, context);
    const row = { lineId: line.id, text: line.text, now: grams && printGrams(grams.valueMg) };
    if (rule.kind === 'fixed') {
      return [{ ...row, why: rule.why, fixed: true, low: '', high: '', stepMg: null, steps: [] }];
    }
    const own = said.get(line.id);
    const { lowMg, highMg, stepMg } = own ?? rule;
    return [
      {
        ...row,
        ...{ why: null, fixed: !own, stepMg },
        ...{ low: typed(lowMg), high: typed(highMg), steps: stepChoices(rule) },
      },
    ];
  });
}

/** Grams as they are typed, to the milligram. */
const typed = (mg: number): string => gramsText({ lowMg: mg, valueMg: mg, highMg: mg });
