import type { StatementPlace, Verdict } from '#lib/claims/judged';
import type { SaidInterval } from '#lib/claims/said-interval';
import { isSpoken } from './spoken';
import { figureStatus, type Figure } from '#lib/figures/figure';
import type { NutrientUnit } from '#lib/claims/statement';
import type { Region } from '#lib/figures/line-parts';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { provisionalWords } from '#lib/figures/provisional-words';
import { publishedStep } from '#lib/figures/published-numbers';
import { printCount, printTo, settled } from '#lib/units/print';
import { holdFigure, isAllowed } from './hold-figure';
import type { JudgeContext } from './judge-context';
import type { About, Meaning } from './meaning';
import { amountSaid, amountText, nutrientName, statedStep } from './nutrient-words';
import { saidNutrient, type NutrientStatement } from './said-number';
import { rightNumber } from './say-instead';
import { meaningsOf } from './scope-meanings';
import { energyShare, scaledFigure, unitFactor } from './stated-unit';
import { cannotSay, type Verdicted } from './verdicted';

/** A statement with what is the same for all that it may be of. */
interface Stated {
  readonly statement: NutrientStatement;
  /** Own units of the nutrient in one of the stated unit. */
  readonly factor: number;
  readonly spoken: boolean;
  readonly context: JudgeContext;
}

/** One thing that a statement may be of, with what that says of it. */
interface Held {
  readonly meaning: Meaning;
  readonly verdict: Verdict;
  /** In the stated unit; null where there is none. */
  readonly figure: Figure | null;
  readonly possible: boolean;
  readonly tally: boolean;
  readonly cause: string | null;
}

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
  const read = readMeanings(statement, place, about, context);
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

function hold(meaning: Meaning, said: SaidInterval, stated: Stated): Held {
  const { statement, context } = stated;
  const none = { meaning, figure: null, possible: false, tally: false };
  if (!meaning.figures) {
    return { ...none, verdict: 'unknown', cause: meaning.cause ?? 'nothing is known of it' };
  }
  const figure = statedFigure(meaning, stated);
  if (!figure) return { ...none, verdict: 'unknown', cause: 'it is not counted' };
  const tally = isPublished(meaning, figure, stated);
  const { verdict, possible } = holdFigure(said, statement.hedge, figure);
  const own = meaning.figures[statement.nutrient] ?? figure;
  const cause = verdict === 'unknown' ? causeOf(own, context) : null;
  return { meaning, figure, tally, possible, cause, verdict: tally ? 'agrees' : verdict };
}

const kept = new WeakMap<Meaning, Map<string, Figure | null>>();

/** The figure in the unit in which it was stated. */
function statedFigure(meaning: Meaning, { statement, factor }: Stated): Figure | null {
  const { nutrient, unit } = statement;
  const own = kept.get(meaning) ?? new Map<string, Figure | null>();
  kept.set(meaning, own);
  const key = `${nutrient} ${unit}`;
  const known = own.get(key);
  if (known !== undefined) return known;
  const figure = meaning.figures?.[nutrient];
  const energy = meaning.figures?.energyKcal;
  const made =
    unit === '%'
      ? figure && energy && energyShare(figure, energy)
      : figure && scaledFigure(figure, meaning.share / factor);
  own.set(key, made ?? null);
  return made ?? null;
}

/** Whether it is the number that is published for it, or was said of it in front of the camera as it stands. */
function isPublished(meaning: Meaning, figure: Figure, stated: Stated): boolean {
  const { statement, factor, context } = stated;
  const { low, high, hedge, nutrient, unit } = statement;
  if (hedge !== 'none' || low !== high || unit === '%' || unit === '%DV') return false;
  if (figureStatus(figure) !== 'known' || !meaning.published) return false;
  const number = context.numbers(nutrient, meaning.published);
  if (!number || number.number === null || number.clashes || number.said?.outside) return false;
  const amount = settled(low * factor);
  if (settled(Number(number.number)) !== amount) return false;
  // A number that adds up only because of rounding is published all the same, and says so.
  if (number.onlyByRounding) return true;
  const half = publishedStep(nutrient, context.file.episode.energyStep) / 2 / factor;
  const printed = { from: low - half, to: low + half, fromOpen: false, toOpen: false };
  return isAllowed({ ...printed, oneSided: false }, figure);
}

function causeOf(figure: Figure, { figures }: JudgeContext): string {
  const { text, range } = printFigure(figure);
  if (figureStatus(figure) === 'open') return `the number is open: ${range}`;
  const { unit } = NUTRIENTS[figure.nutrient];
  const known = amountText(text, figure.nutrient, unit, figures.region);
  return `your breakdown has ${known}, ${range.replace(/^at (?:least|most): /, '')}`;
}

/** One verdict of all that it may be of. */
function settle(held: readonly Held[], stated: Stated): Verdicted {
  const [first] = held;
  if (!first) return cannotSay('which dish?');
  const kinds = new Set(held.map(({ verdict }) => verdict));
  if (held.length === 1) return verdictOf(first, stated);
  if (kinds.size === 1 && kinds.has('off')) {
    const nearest = held.reduce((best, each) =>
      distance(each, stated) < distance(best, stated) ? each : best,
    );
    return { ...verdictOf(nearest, stated), sayInstead: null, why: whyAll(held, stated) };
  }
  if (kinds.size === 1 && kinds.has('agrees')) return verdictOf(first, stated);
  if (!kinds.has('off') && !kinds.has('unknown')) {
    return verdictOf(held.find(({ verdict }) => verdict === 'edge') ?? first, stated);
  }
  return cannotSay(`is it of ${whyAll(held, stated)}?`, { remark: 'toConfirm' });
}

/** Amounts that are named where there are several to choose of. */
const NAMED = 4;

function whyAll(held: readonly Held[], stated: Stated): string {
  const all = held.map((each) => {
    const { meaning, figure } = each;
    return figure ? `${meaning.called} (${figureWords(figure, stated)})` : meaning.called;
  });
  const told = [...new Set(all)];
  const more = told.length - NAMED;
  return more > 1 ? `${told.slice(0, NAMED).join('; ')}; or ${more} more` : told.join('; ');
}

function verdictOf(held: Held, stated: Stated): Verdicted {
  const { meaning, figure, verdict, cause, tally, possible } = held;
  const { statement, context } = stated;
  const against = meaning.against(statement.nutrient);
  if (!figure || verdict === 'unknown') {
    return cannotSay(`${meaning.called}: ${cause ?? 'nothing is known of it'}`, { against });
  }
  const waits = figure.provisional.length > 0;
  const right = verdict === 'agrees' ? null : rightNumber(figure, rightOptions(held, stated));
  const { nutrient, unit } = statement;
  return {
    verdict,
    why: whyOf(held, stated),
    difference: verdict === 'off' ? differenceOf(figure, stated) : null,
    sayInstead: right && amountSaid(right.text, nutrient, unit, context.figures.region),
    remark: waits ? 'toConfirm' : tally ? 'tally' : possible ? 'possibleNotLikely' : null,
    against,
  };
}

function rightOptions({ meaning, figure }: Held, { statement, factor, context }: Stated) {
  const { hedge, unit, nutrient } = statement;
  const number =
    meaning.published && figure && unit !== '%' && unit !== '%DV'
      ? context.numbers(nutrient, meaning.published)
      : null;
  const usable = number?.number != null && number.status === 'known' && !number.said?.outside;
  const published = usable ? settled(Number(number.number) / factor) : null;
  return { hedge, unit, factor, published };
}

function whyOf(held: Held, stated: Stated): string {
  const { meaning, figure, tally } = held;
  if (!figure) return meaning.called;
  const { range } = printed(figure, stated);
  const waits = figure.provisional.length > 0 ? `; ${provisionalWords(figure.provisional)}` : '';
  const published = tally && meaning.published ? publishedWords(meaning, stated) : '';
  return `${meaning.called}: ${figureWords(figure, stated)}, ${range}${waits}${published}`;
}

function publishedWords({ published }: Meaning, { statement, context }: Stated): string {
  const number = published ? context.numbers(statement.nutrient, published) : null;
  const rounding = number?.onlyByRounding ? ', and adds up only because of rounding' : '';
  return `; it is the number that is published for it${rounding}`;
}

function figureWords(figure: Figure, stated: Stated): string {
  const { nutrient, unit } = stated.statement;
  const { text } = printed(figure, stated);
  return amountText(text, nutrient, unit, stated.context.figures.region);
}

const printedFigures = new WeakMap<Figure, PrintedFigure>();

/** Each figure is printed once: many statements are of the same. */
function printed(figure: Figure, stated: Stated): PrintedFigure {
  const known = printedFigures.get(figure);
  if (known) return known;
  const made = printFigure(figure, stepOf(figure, stated));
  printedFigures.set(figure, made);
  return made;
}

const stepOf = ({ value }: Figure, { statement }: Stated) => statedStep(statement.unit, value);

/** How far what was said is from a figure; of a range, its nearer end; of a figure known on one side, that side. */
function apart(figure: Figure, { statement }: Stated): number {
  const { low, high } = statement;
  const status = figureStatus(figure);
  const side = status === 'atLeast' ? figure.low : status === 'atMost' ? figure.high : figure.value;
  const value = side ?? figure.value;
  if (value < low) return settled(low - value);
  return value > high ? settled(high - value) : 0;
}

function distance({ figure }: Held, stated: Stated): number {
  return figure ? Math.abs(apart(figure, stated)) : Infinity;
}

function differenceOf(figure: Figure, stated: Stated): string | null {
  const { nutrient, unit } = stated.statement;
  const by = apart(figure, stated);
  const size = Math.abs(by);
  if (size === 0) return null;
  const steps = [statedStep(unit, size), 0.1, 0.01];
  const step = steps.find((each) => Number(printTo(size, each)) > 0);
  if (step === undefined) return null;
  const number = step === 1 ? printCount(size) : printTo(size, step).replace(/\.0+$/, '');
  const least = figureStatus(figure) === 'known' ? '' : 'at least ';
  const amount = amountText(`${least}${number}`, nutrient, unit, stated.context.figures.region);
  return `${amount} ${by > 0 ? 'more' : 'less'} than your breakdown`;
}
