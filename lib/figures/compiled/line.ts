import type { AmountContext } from '#lib/episode/context';
import { eatenOnce, type EatenAmount } from '#lib/episode/eaten-amount';
import type { Recipe, RecipeLine } from '#lib/episode/recipe-schema';
import { unitsOfBasis } from '#lib/figures/composition';
import { areEqual } from '#lib/figures/compiled/alike';
import { compositionOf, type Composition, type Lack } from '#lib/figures/compiled/composition';
import type { Lists } from '#lib/figures/compiled/lists';
import type { Panel } from '#lib/figures/compiled/panel';
import {
  askedSummand,
  productOf,
  type LineLack,
  type Product,
  type Summand,
} from '#lib/figures/compiled/summand';
import type { LineFigures } from '#lib/figures/episode-figures';
import type { MissingPart } from '#lib/figures/figure';
import { ingredientParts } from '#lib/figures/recipe-parts';
import { NOTHING, type Parts } from '#lib/figures/parts';
import { compileFactor } from '#lib/units/compiled-factor';
import { collect } from '#lib/units/sum-of-products';

/** An ingredient as a summand. */
export interface CompiledLine extends Summand {
  readonly line: RecipeLine;
  readonly eaten: EatenAmount;
  /** Its row of the breakdown, once it was asked for. */
  row: LineFigures | null;
  /** The lists of its own figures, once they were asked for. */
  lists: Lists | null;
  /** By nutrient, the sources of its own figures, once they were asked for; null where that is asked by terms. */
  sources: readonly (readonly string[])[] | null;
}

/**
 * What an ingredient may say and still be an amount times its food's composition. Whatever else it says, now or in a
 * later version of the file, is asked of the rules nutrient by nutrient, unless it says nothing (null, an empty list).
 */
const PLAIN_WORDS: ReadonlySet<string> = new Set<keyof RecipeLine>([
  'id',
  'text',
  'quantity',
  'unit',
  'measureName',
  'foodId',
  'match',
  'state',
  'asBought',
  'planned',
  'leftBehind',
  'cookMethod',
  'spoiltByTake',
  'note',
  'shopNote',
]);

/**
 * Compiles an ingredient of a recipe for a panel; all else that it rests on is in the readings and the context.
 * @param before what it was before it was edited: its lists are taken over where they are still the same
 */
export function compileLine(
  line: RecipeLine,
  recipe: Pick<Recipe, 'id' | 'weighings'>,
  context: AmountContext,
  panel: Panel,
  before?: CompiledLine,
): CompiledLine {
  const { weighings } = recipe;
  const eaten = eatenOnce(line, weighings, context);
  const asked: (Parts | undefined)[] = [];
  const parts = (place: number): Parts => {
    const nutrient = panel.nutrients[place];
    if (!nutrient) return NOTHING;
    return (asked[place] ??= ingredientParts(line, recipe, context, nutrient, panel.region));
  };
  const product = isPlain(line) ? eatenProduct(eaten, panel) : null;
  const common = { line, eaten, row: null, lists: null, sources: null };
  if (!product) return { ...common, ...askedSummand(panel, (place) => [parts(place)]) };
  const products = [product];
  const { byTerms } = product.of;
  const [same] = before?.line.text === line.text ? before.products : [];
  const isSameFood = before && same?.of === product.of;
  const lacking = isSameFood ? before.lacking : lackingOf(line, product.of);
  const sources =
    isSameFood &&
    same.factor.none === product.factor.none &&
    areEqual(same.factor.ids, product.factor.ids)
      ? before.sources
      : null;
  // What was photographed is no plain word, and is asked by terms.
  const provisional = line.match === 'confirmed' ? NOTHING.provisional : parts(0).provisional;
  const isSameListed = isSameFood && before.provisional === provisional;
  const lists = isSameListed ? before.lists : null;
  return { ...common, sources, lists, products, byTerms, lacking, provisional, parts };
}

function lackingOf(line: RecipeLine, of: Composition): Summand['lacking'] {
  const lacks = of.lacks.map((lack) => lackOfLine(line, lack));
  return of.lacking.map(([place, lack]) => [place, lacks[lack] ?? NOTHING] as const);
}

function isPlain(line: RecipeLine): boolean {
  for (const word in line) {
    if (!PLAIN_WORDS.has(word) && !saysNothing(line[word as keyof RecipeLine])) return false;
  }
  return true;
}

function saysNothing(said: unknown): boolean {
  return said === null || said === false || (Array.isArray(said) && said.length === 0);
}

/** What is eaten of a food as a product, unless more is said of it than how much. */
function eatenProduct(eaten: EatenAmount, panel: Panel): Product | null {
  if (!eaten.known || !eaten.food) return null;
  const { known: _known, amount, food, ...more } = eaten;
  if (!Object.values(more).every(saysNothing)) return null;
  const units = unitsOfBasis(food, amount);
  const factor = units && compileFactor(collect(units.terms), units.sources);
  if (!factor) return null;
  const of = compositionOf(food, panel);
  return productOf({ ...NOTHING, ...units }, factor, of);
}

function lackOfLine({ id, text }: RecipeLine, { above, below, open }: Lack): LineLack {
  const said = (reason: MissingPart['reason']): MissingPart => ({ lineId: id, text, reason });
  return { above: above.map(said), below: below.map(said), open: open.map(said) };
}
