import { saidChange } from '#lib/lock/said-numbers';
import type { DayDish } from '#lib/overview/dishes-on-day';
import type { DayFold } from '#lib/shoot/fold-day';
import type { SaidLine } from '#lib/episode/said-line';
import { scopeKey } from '#lib/episode/said-scope';
import type { LiveRow } from '../live-row';
import type { SaidWarning } from './said-warnings';

/** What was said and has changed since, where what can be said of it now is known. */
export function warningsOf(
  said: readonly SaidLine[],
  dishes: readonly DayDish[],
  rows: readonly LiveRow[],
  fold: DayFold,
  region: 'US' | 'EU',
): SaidWarning[] {
  const says = dishes.flatMap((dish) => dish.says.map((say) => ({ dish, say })));
  return said.flatMap((one): SaidWarning[] => {
    const found = says.find(({ say }) => scopeKey(say.scope) === scopeKey(one.scope));
    const change = found && saidChange(one.numbers, found.say.line, region);
    if (!found || !change) return [];
    const { dish, say } = found;
    const about =
      say.scope.kind === 'day' ? say.about : `${dish.title}: ${say.about.toLowerCase()}`;
    const plateGone = rows.some(
      ({ segmentId, role, key }) =>
        segmentId === dish.segmentId && role === 'eat' && fold.doneAt.has(key),
    );
    return [{ said: one, change, about, now: say, plateGone }];
  });
}
