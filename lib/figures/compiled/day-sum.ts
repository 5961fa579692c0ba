import { arrangeTogether, type Arrangement } from '#lib/figures/compiled/arrangement';
import { askedOf, type Added, type DishSum } from '#lib/figures/compiled/dish-sum';
import { figuresFrom, figuresInNumbers, type Figures } from '#lib/figures/compiled/figures';
import { askedSummand } from '#lib/figures/compiled/summand';
import { keptLists, listsOf, listsTogether, type Lists } from '#lib/figures/compiled/lists';
import type { Arranged, Memory } from '#lib/figures/compiled/memory';
import type { Together } from '#lib/figures/compiled/arrangement';
import { scopeOf, type Scope, type Share } from '#lib/figures/compiled/scope';
import { sourceLists } from '#lib/figures/compiled/source-lists';
import type { Sums } from '#lib/figures/compiled/sums';
import { sumTogether } from '#lib/figures/compiled/sums-together';
import { once } from '#lib/figures/once';
import { addParts, figureOf } from '#lib/figures/parts';
import type { Nutrient } from '#lib/foods/nutrients';

/** What of a dish counts to a day. */
export interface Eaten {
  readonly dish: DishSum;
  readonly share: Share;
}

/** All figures of several dishes together: what they share, foods and readings, meets before bounds are taken. */
export function dayFigures(eaten: readonly Eaten[], memory: Memory): Figures {
  const { panel } = memory;
  const { length } = panel.nutrients;
  const parts: Added[] = [];
  const times: number[] = [];
  const lists: Lists[] = [];
  let byTerms = false;
  for (const { dish, share } of eaten) {
    const scope = scopeOf(share);
    if (scope.kind === 'without') {
      lists.push(listsWithout(scope, memory));
      continue;
    }
    lists.push(dish.lists());
    if (scope.kind === 'byTerms') byTerms = true;
    else {
      times.push(scope.times);
      parts.push(scope.kind === 'by' ? dish.shared(scope) : dish.whole());
    }
  }
  const { arrangement, sources } = arrangedTogether(parts, memory);
  const sums = byTerms ? null : togetherSums(arrangement, parts, times);
  const all = keptLists(memory.lists, 'day', lists, () => listsTogether(lists, length));
  const byRules = (nutrient: Nutrient, place: number) =>
    figureOf(nutrient, addParts(eaten.map((of) => of.share(of.dish.parts(place)))));
  if (!sums) return figuresFrom(panel, byRules);
  return figuresInNumbers(panel, sums, 1, all, sources(), askedOf(arrangement, sums), byRules);
}

function arrangedTogether(parts: readonly Added[], memory: Memory): Arranged<Together> {
  const before = memory.together;
  const arrangements = parts.map(({ arrangement }): Arrangement => arrangement);
  const same =
    before?.arrangement.parts.length === arrangements.length &&
    before.arrangement.parts.every((each, place) => each === arrangements[place]);
  if (before && same) return before;
  const { length } = memory.panel.nutrients;
  const entries = arrangements.flatMap((each) => each.entries);
  const made = {
    asked: null,
    arrangement: arrangeTogether(arrangements, length),
    sources: once(() => sourceLists(entries, length)),
  };
  memory.together = made;
  return made;
}

function togetherSums(
  arrangement: Together,
  parts: readonly Added[],
  times: readonly number[],
): Sums | null {
  const sums = parts.flatMap((each) => each.sums ?? []);
  return sums.length === parts.length ? sumTogether(arrangement, sums, times) : null;
}

const without = new WeakMap<Scope, Lists>();

function listsWithout(scope: Extract<Scope, { kind: 'without' }>, { panel }: Memory): Lists {
  const known = without.get(scope);
  if (known) return known;
  const lists = listsOf([askedSummand(panel, () => [scope.parts])], panel.nutrients.length);
  without.set(scope, lists);
  return lists;
}
