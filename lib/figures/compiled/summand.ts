import { lacksAny, oneOf, type Composition } from '#lib/figures/compiled/composition';
import type { Panel } from '#lib/figures/compiled/panel';
import type { MissingPart, ProvisionalPart } from '#lib/figures/figure';
import { addParts, NOTHING, oncePerLine, type Parts } from '#lib/figures/parts';
import { compileFactor } from '#lib/units/compiled-factor';
import type { Factor } from '#lib/units/factor';
import type { Term } from '#lib/units/sum-of-products';

/** What a summand lacks of a nutrient; the parts of one figure's `missing`. */
export interface LineLack {
  readonly above: readonly MissingPart[];
  readonly below: readonly MissingPart[];
  readonly open: readonly MissingPart[];
}

/** An amount times a composition, added or taken away. */
export interface Product {
  /** The amount before it was compiled. */
  readonly amount: Parts;
  readonly factor: Factor;
  /** Those of the factor, where loops look for them. */
  readonly numbers: Float64Array;
  readonly of: Composition;
  readonly sign: 1 | -1;
  /** The last share that was taken of it, and what that came to: null where it is no product. */
  shared: { readonly key: string; readonly product: Product | null } | null;
}

/** An amount times a composition, with the amount compiled. */
export function productOf(
  amount: Parts,
  factor: Factor,
  of: Composition,
  sign: 1 | -1 = 1,
): Product {
  return { amount, factor, numbers: factor.numbers, of, sign, shared: null };
}

/** A summand of figures with everything that they need, worked out once. */
export interface Summand {
  readonly products: readonly Product[];
  /** By nutrient: 1 where its terms must be asked, since they are not those products; null for none. */
  readonly byTerms: Uint8Array | null;
  /** Places of the nutrients that it lacks, each with what it lacks. */
  readonly lacking: readonly (readonly [nutrient: number, lack: LineLack])[];
  readonly provisional: readonly ProvisionalPart[];
  /** Its part of the nutrient in a place of the panel, as the rules give it. */
  readonly parts: (place: number) => Parts;
}

/**
 * A summand of which nothing is known but what the rules answer, nutrient by nutrient, in parts that add up to it.
 * Where they answer with amounts alone and no value of a food, these are what is added and what is taken away of that
 * nutrient.
 */
export function askedSummand(panel: Panel, answer: (place: number) => readonly Parts[]): Summand {
  const { length } = panel.nutrients;
  let byTerms: Uint8Array | null = null;
  const products: Product[] = [];
  const lacking: [number, LineLack][] = [];
  let provisional: readonly ProvisionalPart[] = [];
  for (let place = 0; place < length; place += 1) {
    const all = answer(place);
    if (place === 0) provisional = oncePerLine(all.flatMap((parts) => parts.provisional));
    if (all.length === 0) continue;
    const found = amountsOf(all, oneOf(place, panel));
    if (found) for (const product of found) products.push(product);
    else (byTerms ??= new Uint8Array(length))[place] = 1;
    for (const of of all) if (lacksAny(of)) lacking.push([place, of]);
  }
  return {
    products,
    byTerms,
    lacking: lacking.length > 0 ? lacking : NO_LACKS,
    // The same empty list each time: sums that lack the same are then found to be the same.
    provisional: provisional.length > 0 ? provisional : NOTHING.provisional,
    parts: (place) => addParts(answer(place)),
  };
}

const NO_LACKS: Summand['lacking'] = [];

/** What ids of the values of foods begin with; see `statedNutrient`. */
const FOOD = 'food:';

/** Parts as amounts of one thing; null where they are none, or not each by itself. */
function amountsOf(all: readonly Parts[], of: Composition): readonly Product[] | null {
  const products: Product[] = [];
  for (const parts of all) {
    const found = amountsAlone(parts, of);
    if (!found) return null;
    for (const product of found) products.push(product);
  }
  return products;
}

const kept = new WeakMap<Parts, { readonly of: Composition; readonly products: Products }>();
type Products = readonly Product[] | null;

/** What is added and what is taken away in parts, worked out once for the same object. */
function amountsAlone(parts: Parts, of: Composition): Products {
  const known = kept.get(parts);
  if (known?.of === of) return known.products;
  const products = signedAmounts(parts, of);
  kept.set(parts, { of, products });
  return products;
}

function signedAmounts({ terms, sources }: Parts, of: Composition): Products {
  const ofFood = (ids: readonly string[]) => ids.some((id) => id.startsWith(FOOD));
  if (terms.some(({ up, down }) => ofFood(up) || ofFood(down))) return null;
  const products: Product[] = [];
  for (const sign of [1, -1] as const) {
    const signed = terms
      .filter(({ coefficient }) => coefficient * sign > 0)
      .map((term): Term => ({ ...term, coefficient: term.coefficient * sign }));
    if (signed.length === 0) continue;
    const factor = compileFactor(signed, sources);
    if (!factor) return null;
    products.push(productOf({ ...NOTHING, terms: signed, sources }, factor, of, sign));
  }
  return products;
}
