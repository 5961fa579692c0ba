import type { Breakdown, BreakdownRow } from '#lib/figures/breakdown';
import type { Cause } from '#lib/figures/breakdown-uncertainty';
import { figureStatus } from '#lib/figures/figure';
import { missingText } from '#lib/figures/print-figure';

/** Below this part of the uncertainty nothing is worth doing better (common practice, no source). */
const WORTH_IT = 0.05;

const WEIGH = 'Weigh this better next time';

/** What to do about a cause, and what of the ingredient it is. */
const MENDED: Readonly<Record<Cause, readonly [act: string, what: string]>> = {
  scale: [WEIGH, 'the step of the scale'],
  quantity: [WEIGH, 'its range of amounts'],
  measure: [WEIGH, 'its spoon, cup or piece'],
  serving: [WEIGH, 'the rounded weight of its serving'],
  refuse: [WEIGH, 'its peel and trim, taken by a table,'],
  yield: [WEIGH, 'its cooked weight, taken by a yield,'],
  leftBehind: [WEIGH, 'what stays behind'],
  either: ['Decide this next time', 'not knowing which of two foods it was'],
  bounded: ['Look this up', 'what its source does not state'],
  value: ['Read this better next time', 'the rounding of its label'],
};

/**
 * One sentence: which ingredient to weigh or read better, so that the range becomes smaller; what to fill in
 * first where the figure is not known; or that there is nothing to do, since what is left are a table's digits.
 * @example breakdownAdvice(whole) // 'Weigh this better next time: 1 tablespoon olive oil. Its spoon, cup or
 *   piece makes 34 % of the uncertainty.'
 */
export function breakdownAdvice({ figure, rows, finishedShare }: Breakdown): string {
  if (figureStatus(figure) !== 'known')
    return `Fill this in first: ${missingText(figure.missing)}.`;
  const best = rows
    .flatMap((row) => [...row.causes].map(([cause, share]) => ({ row, cause, share })))
    .filter(({ row, cause }) => canMend(row, cause))
    .reduce<Mendable | null>(
      (most, each) => (most && most.share >= each.share ? most : each),
      null,
    );
  const finished = finishedShare ?? 0;
  if (finished >= WORTH_IT && finished > (best?.share ?? 0)) {
    return `${WEIGH}: the finished dish. Its weight makes ${percent(finished)} of the uncertainty.`;
  }
  if (!best || best.share < WORTH_IT) {
    return 'Nothing to weigh or read better: the range comes from the digits that the tables print.';
  }
  const [act, what] = MENDED[best.cause];
  const reason = `${what.charAt(0).toUpperCase()}${what.slice(1)} makes ${percent(best.share)}`;
  return `${act}: ${best.row.text}. ${reason} of the uncertainty.`;
}

interface Mendable {
  readonly row: BreakdownRow;
  readonly cause: Cause;
  readonly share: number;
}

/** A table's digits are as they are; a label can be read again, or its second column beside the first. */
function canMend({ foods }: BreakdownRow, cause: Cause): boolean {
  return cause !== 'value' || foods.some(({ food }) => food.kind === 'label');
}

/** A share for a sentence or a cell: `percent(0.344)` → `'34 %'`, `percent(0.004)` → `'under 1 %'`. */
export function percent(share: number): string {
  if (share > 0 && share < 0.01) return 'under 1 %';
  return `${Math.round(share * 100)} %`;
}
