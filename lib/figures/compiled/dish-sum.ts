import { areAlike, areEqual } from '#lib/figures/compiled/alike';
import { arrange, type Arrangement } from '#lib/figures/compiled/arrangement';
import { figuresFrom, figuresInNumbers, type Figures } from '#lib/figures/compiled/figures';
import { productOf, type Product, type Summand } from '#lib/figures/compiled/summand';
import { keptLists, listsOf, type Lists } from '#lib/figures/compiled/lists';
import type { Arranged, Memory } from '#lib/figures/compiled/memory';
import { pack, packAgain } from '#lib/figures/compiled/packing';
import { scopeOf, type Scope, type Share } from '#lib/figures/compiled/scope';
import { sourceLists } from '#lib/figures/compiled/source-lists';
import { sumUp, type Sums } from '#lib/figures/compiled/sums';
import { withoutCancelled } from '#lib/figures/compiled/without-cancelled';
import { once } from '#lib/figures/once';
import { addParts, figureOf, NOTHING, type Parts } from '#lib/figures/parts';
import { compileFactor } from '#lib/units/compiled-factor';
import type { Nutrient } from '#lib/foods/nutrients';
import { multiply } from '#lib/units/sum-of-products';

/** Summands that are added up once, whole, and of which shares are then taken. */
export interface DishSum {
  readonly summands: readonly Summand[];
  readonly whole: () => Added;
  readonly lists: () => Lists;
  /** The whole in a place of the panel as the rules add it up, for what cannot be taken from numbers. */
  readonly parts: (place: number) => Parts;
  /** The sum with its amounts multiplied by a share. */
  readonly shared: (scope: SharedScope) => Added;
}

type SharedScope = Extract<Scope, { kind: 'by' }>;

/** A sum in numbers; null where it must be taken by terms. */
export interface Added extends Arranged<Arrangement> {
  readonly sums: Sums | null;
}

/** Adds up the summands of a dish, called `id` in the memory. */
export function dishSum(id: string, summands: readonly Summand[], memory: Memory): DishSum {
  const { length } = memory.panel.nutrients;
  const asked: (Parts | undefined)[] = [];
  const byScope = new Map<string, Added>();
  const byTerms = new Uint8Array(length);
  const own: Product[] = [];
  const listed: unknown[] = [];
  for (const summand of summands) {
    for (const product of summand.products) own.push(product);
    listed.push(summand.lacking, summand.provisional);
    if (summand.byTerms) addAsked(byTerms, summand.byTerms);
  }
  // Only what a dish within the dish adds can be taken away again by what cooking changes.
  const products = summands.filter(hasAmountsAlone).length > 1 ? withoutCancelled(own) : own;
  return {
    summands,
    whole: once(() => addUp(id, products, byTerms, memory)),
    lists: once(() => keptLists(memory.lists, id, listed, () => listsOf(summands, length))),
    parts: (place) => (asked[place] ??= addParts(summands.map((each) => each.parts(place)))),
    shared: (scope) => {
      const known = byScope.get(scope.key);
      if (known) return known;
      const entries = products.map((each) => sharedProduct(each, scope));
      const all = entries.filter((each) => each !== null);
      const unlike = all.length === entries.length ? byTerms : new Uint8Array(length).fill(1);
      const added = addUp(`${id}|${scope.shape}`, all, unlike, memory);
      byScope.set(scope.key, added);
      return added;
    },
  };
}

function addAsked(to: Uint8Array, more: Uint8Array): void {
  for (let place = 0; place < to.length; place += 1) if (more[place]) to[place] = 1;
}

const hasAmountsAlone = ({ products }: Summand): boolean =>
  products.some(({ of }) => of.only !== null);

/** A product with its amount multiplied by a share, null where that makes no factor; the last share is kept with it. */
function sharedProduct(whole: Product, { key, terms, sources }: SharedScope): Product | null {
  if (whole.shared?.key === key) return whole.shared.product;
  const { amount, of, sign } = whole;
  const all = new Map([...amount.sources, ...sources]);
  const multiplied = multiply(amount.terms, terms);
  const factor = compileFactor(multiplied, all);
  const product =
    factor && productOf({ ...NOTHING, terms: multiplied, sources: all }, factor, of, sign);
  whole.shared = { key, product };
  return product;
}

/** Adds up entries, in the arrangement that the same sum had before if it still has it. */
function addUp(
  id: string,
  entries: readonly Product[],
  byTerms: Uint8Array,
  memory: Memory,
): Added {
  let kept = memory.arranged.get(id);
  if (!kept || !areEqual(kept.asked ?? [], byTerms) || !areAlike(kept.packed.entries, entries)) {
    kept = {
      asked: byTerms,
      arrangement: arrange(entries, byTerms),
      sources: once(() => sourceLists(entries, byTerms.length)),
      packed: pack(entries),
    };
    memory.arranged.set(id, kept);
  } else kept.packed = packAgain(kept.packed, entries);
  const { asked, arrangement, sources } = kept;
  return { asked, arrangement, sources, sums: sumUp(arrangement, kept.packed) };
}

/** Whether the nutrient in a place can be taken from numbers. */
export function isInNumbers(
  { byTerms }: Pick<Arrangement, 'byTerms'>,
  { special }: Sums,
  place: number,
): boolean {
  return byTerms[place] === 0 && special.get(place) !== null;
}

/** By nutrient: 1 where it cannot be taken from numbers. */
export function askedOf(arrangement: Pick<Arrangement, 'byTerms'>, sums: Sums): Uint8Array {
  const out = [...sums.special.keys()].filter((place) => !isInNumbers(arrangement, sums, place));
  if (out.length === 0) return arrangement.byTerms;
  const asked = arrangement.byTerms.slice();
  for (const place of out) asked[place] = 1;
  return asked;
}

/** All figures of a share of a dish. */
export function shareFigures(dish: DishSum, share: Share, { panel }: Memory): Figures {
  const scope = scopeOf(share);
  if (scope.kind === 'without') {
    return figuresFrom(panel, (nutrient) => figureOf(nutrient, scope.parts));
  }
  const byRules = (nutrient: Nutrient, place: number) =>
    figureOf(nutrient, share(dish.parts(place)));
  if (scope.kind === 'byTerms') return figuresFrom(panel, byRules);
  const { sums, sources, arrangement } = scope.kind === 'by' ? dish.shared(scope) : dish.whole();
  if (!sums) return figuresFrom(panel, byRules);
  const asked = askedOf(arrangement, sums);
  return figuresInNumbers(panel, sums, scope.times, dish.lists(), sources(), asked, byRules);
}
