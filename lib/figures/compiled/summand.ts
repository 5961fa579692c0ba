import { lacksAny, oneOf, type Composition } from '#lib/figures/compiled/composition';
import type { Panel } from '#lib/figures/compiled/panel';
import type { MissingPart, ProvisionalPart } from '#lib/figures/figure';
import { NOTHING, type Parts } from '#lib/figures/parts';
import { compileFactor, type Factor } from '#lib/units/compiled-factor';
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
  readonly of: Composition;
  readonly sign: 1 | -1;
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
 * A summand of which nothing is known but what the rules answer, nutrient by nutrient. Where they answer with amounts
 * alone and no value of a food, these are what is added and what is taken away of that nutrient.
 */
export function askedSummand(panel: Panel, parts: (place: number) => Parts): Summand {
  const byTerms = new Uint8Array(panel.nutrients.length);
  const products: Product[] = [];
  const lacking: [number, LineLack][] = [];
  for (let place = 0; place < byTerms.length; place += 1) {
    const of = parts(place);
    if (lacksAny(of)) lacking.push([place, of]);
    if (of.terms.length === 0) continue;
    const found = amountsAlone(of, oneOf(place, panel));
    if (found) products.push(...found);
    else byTerms[place] = 1;
  }
  const all = lacking.length > 0 ? lacking : NO_LACKS;
  const asked = byTerms.includes(1) ? byTerms : null;
  return { products, byTerms: asked, lacking: all, provisional: parts(0).provisional, parts };
}

const NO_LACKS: Summand['lacking'] = [];

/** What ids of the values of foods begin with; see `statedNutrient`. */
const FOOD = 'food:';

function amountsAlone({ terms, sources }: Parts, of: Composition): readonly Product[] | null {
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
    products.push({ amount: { ...NOTHING, terms: signed, sources }, factor, of, sign });
  }
  return products;
}
