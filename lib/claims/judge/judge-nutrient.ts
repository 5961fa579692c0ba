import type { StatementPlace } from '#lib/claims/judged';
import type { NutrientUnit } from '#lib/claims/statement';
import type { Figure } from '#lib/figures/figure';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { settleEvery } from './every-dish';
import { hold, statedFigure, type Stated } from './hold-nutrient';
import type { JudgeContext } from './judge-context';
import type { About, Meaning } from './meaning';
import { nutrientName } from './nutrient-words';
import { saidNutrient, type NutrientStatement } from './said-number';
import { meaningsOf } from './scope-meanings';
import { settle } from './settle-nutrient';
import { isSpoken } from './spoken';
import { unitFactor } from './stated-unit';
import { cannotSay, type Verdicted } from './verdicted';

/**
 * Holds a stated amount of a nutrient against the breakdown (MODEL D.1, D.2, C.4). Where it may be of several amounts
 * it agrees only if it does with each of them, and is off only if it is with each.
 * @example judgeNutrient(said650, place, about, context).difference // '38 calories more than your breakdown'
 */
export function judgeNutrient(
  statement: NutrientStatement,
  place: Pick<StatementPlace, 'kind'>,
  about: About,
  context: JudgeContext,
): Verdicted {
  if (statement.every && !about.settled) return judgeEvery(statement, place, context);
  const read = readMeanings(statement, place, about, context);
  if (typeof read === 'string') return cannotSay(read);
  const { stated } = read;
  const said = saidNutrient(statement, stated.factor, stated.spoken);
  const held = read.meanings.map((meaning) => hold(meaning, said, stated));
  const verdicted = settle(held, stated);
  // Another reading was possible: no verdict hangs on it but one that any reading would have.
  if (statement.unsure && verdicted.verdict !== 'unknown') {
    return cannotSay(`it can be read in two ways; as it was read, ${verdicted.why}`, {
      remark: 'toConfirm',
      against: verdicted.against,
    });
  }
  return verdicted;
}

/** Of each dish: of one of its portions, where it has some, else of all of it, or of what is eaten of it. */
function judgeEvery(
  { every: _, dish: _named, ...statement }: NutrientStatement,
  place: Pick<StatementPlace, 'kind'>,
  context: JudgeContext,
): Verdicted {
  const all = context.dishes.map((dish) => {
    const scope = dish.dish.recipe.portions.length > 0 ? ('portion' as const) : ('dish' as const);
    const about = { dishes: [dish], day: false, portionId: null, settled: null };
    const verdicted = judgeNutrient({ ...statement, scope }, place, about, context);
    return { title: dish.dish.title, verdicted };
  });
  return settleEvery(all);
}

/**
 * Tries other numbers in the place of a statement’s: what is near what it may be of, and what would agree with all of it.
 */
export function nutrientTrial(
  statement: NutrientStatement,
  place: Pick<StatementPlace, 'kind'>,
  about: About,
  context: JudgeContext,
): {
  readonly near: (value: number) => boolean;
  readonly agrees: (other: NutrientStatement) => boolean;
} {
  const read = statement.every ? '' : readMeanings(statement, place, about, context);
  const figures =
    typeof read === 'string'
      ? [null]
      : read.meanings.map((meaning) => statedFigure(meaning, read.stated));
  const near = (value: number) => figures.every((figure) => isNear(figure, value, statement.hedge));
  const agrees = (other: NutrientStatement) => {
    const tried = readMeanings(other, place, about, context);
    if (typeof tried === 'string') return false;
    const { stated, meanings } = tried;
    const all = meanings.map((meaning) => statedFigure(meaning, stated));
    if (!all.every((figure) => isNear(figure, other.low, other.hedge))) return false;
    const said = saidNutrient(other, stated.factor, stated.spoken);
    return meanings.every((meaning) => hold(meaning, said, stated).verdict === 'agrees');
  };
  return { near, agrees };
}

/**
 * Near enough to a value to be another hearing of it: 6 % and 25 units are more than “about” reaches (MODEL D.1). What is
 * one-sided would agree with anything that is large or small enough, so a tenth of it is all that is taken for one.
 */
function isNear(figure: Figure | null, said: number, hedge: NutrientStatement['hedge']): boolean {
  if (!figure) return false;
  const oneSided = hedge === 'atLeast' || hedge === 'atMost' || hedge === 'under';
  const reach = oneSided ? 0.1 * said : 25 + 0.06 * said;
  return figure.value >= said - reach && figure.value <= said + reach;
}

interface Read {
  readonly meanings: readonly Meaning[];
  readonly stated: Stated;
}

/** What a statement may be of and what it covers, or why nobody can say. */
function readMeanings(
  statement: NutrientStatement,
  place: Pick<StatementPlace, 'kind'>,
  about: About,
  context: JudgeContext,
): Read | string {
  const { nutrient, unit } = statement;
  const { region } = context.figures;
  const factor = unit === '%' ? 1 : unitFactor(nutrient, unit, region);
  if (factor === null) return notInUnit(nutrient, unit, region);
  const meanings = meaningsOf(statement, about, context);
  if (typeof meanings === 'string') return meanings;
  return { meanings, stated: { statement, factor, context, spoken: isSpoken(place.kind) } };
}

function notInUnit(nutrient: Nutrient, unit: NutrientUnit, region: Region): string {
  const name = nutrientName(nutrient, region);
  return unit === '%DV'
    ? `the law has no daily amount of ${name} to take a percentage of`
    : `${name} is counted in ${NUTRIENTS[nutrient].unit}, not in ${unit}`;
}
