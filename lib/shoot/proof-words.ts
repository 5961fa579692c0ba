import { clockText, minutesText } from '#lib/shoot/day-words';
import type { DayLevel, PlanProof } from '#lib/shoot/plan';
import type { DayProgress } from '#lib/shoot/solve-day';

const NAMES: Readonly<Record<DayLevel, string>> = {
  wrap: 'Wrap, on the 5-minute grid',
  danger: 'Food unchilled, summed',
  oven: 'Ovens on or changing',
  switches: 'Hands go to another segment',
};

/** What is known of a plan, in one sentence. */
export function proofText({ status, levels }: PlanProof): string {
  const [wrap] = levels;
  switch (status) {
    case 'proven':
      return 'Proven for the steps, times and ties as they are written: no order of this kind wraps earlier or is gentler on food, ovens and hands.';
    case 'gap':
      if (wrap?.proven === true) return 'Proven: no order of this kind wraps earlier.';
      return wrap?.bound == null
        ? 'The best order found so far.'
        : `The best order found; none of this kind wraps before ${clockText(wrap.bound)}.`;
    case 'clash':
      return 'Proven: no order keeps every rule.';
    case 'rules':
      return 'An order by rules of thumb; a better one may exist.';
  }
}

/** One line for a level: its name, what the plan has, and what no plan is below. */
export interface LevelLine {
  readonly name: string;
  readonly value: string;
  readonly bound: string;
}

/** The levels of a proof as a table's rows, the most important first. */
export function levelLines({ levels }: PlanProof): LevelLine[] {
  return levels.map(({ level, value, bound, proven }) => ({
    name: NAMES[level],
    value: amountText(level, value),
    bound: proven ? 'the least there is' : bound === null ? 'not known' : amountText(level, bound),
  }));
}

function amountText(level: DayLevel, amount: number): string {
  if (level === 'wrap') return clockText(amount);
  return level === 'switches' ? `${amount} times` : minutesText(amount);
}

/** What a search has, while it goes on: the wrap found and what none is before, or that it polishes the order. */
export function searchText(progress: DayProgress | null): string {
  if (progress === null) return 'Looking for the best order.';
  const { level, best, bound, solved } = progress;
  if (level > 0)
    return 'Wrap is proven; looking for the order that is gentler on food, oven and hands.';
  const found = best === null ? 'no order yet' : `wrap at ${clockText(best + solved.originMin)}`;
  const least = bound === null ? '' : `, none before ${clockText(bound + solved.originMin)}`;
  return `Looking for the best order: ${found}${least}.`;
}
