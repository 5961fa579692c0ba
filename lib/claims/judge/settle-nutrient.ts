import { figureStatus, type Figure } from '#lib/figures/figure';
import { printFigure, type PrintedFigure } from '#lib/figures/print-figure';
import { provisionalWords } from '#lib/figures/provisional-words';
import { printCount, printTo, settled } from '#lib/units/print';
import { holdFigure } from './hold-figure';
import type { Held, Stated } from './hold-nutrient';
import type { Meaning } from './meaning';
import { amountSaid, amountText, statedStep } from './nutrient-words';
import { saidNutrient } from './said-number';
import { rightNumber } from './say-instead';
import { cannotSay, type Verdicted } from './verdicted';

/** One verdict of all that it may be of. */
export function settle(held: readonly Held[], stated: Stated): Verdicted {
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
  const { hedge, unit, nutrient, low, high } = statement;
  const said = low === high ? { said: low } : {};
  const number =
    meaning.published && figure && unit !== '%' && unit !== '%DV'
      ? context.numbers(nutrient, meaning.published)
      : null;
  const usable = number?.number != null && number.status === 'known' && !number.said?.outside;
  const published = usable ? settled(Number(number.number) / factor) : null;
  return { hedge, unit, factor, published, ...said };
}

function whyOf(held: Held, stated: Stated): string {
  const { meaning, figure, tally } = held;
  if (!figure) return meaning.called;
  const { range } = printed(figure, stated);
  const waits = figure.provisional.length > 0 ? `; ${provisionalWords(figure.provisional)}` : '';
  const published = tally && meaning.published ? publishedWords(meaning, stated) : '';
  return `${meaning.called}: ${figureWords(figure, stated)}, ${range}${waits}${published}${roundedWords(held, stated)}`;
}

/** Why a number is another in a text, or where it is published, than it would be said or shown. */
function roundedWords(held: Held, stated: Stated): string {
  const { figure, verdict, tally } = held;
  if (!figure || verdict === 'agrees' || tally) return '';
  const { statement, factor, spoken } = stated;
  const { published } = rightOptions(held, stated);
  const shown = printed(figure, stated).text.replaceAll(',', '');
  const other = published !== null && Number(shown) !== published && verdict === 'off';
  const tallied = other ? `; ${printCount(published)} is published, so that numbers add up` : '';
  if (verdict !== 'edge' || spoken || statement.hedge !== 'none') return tallied;
  const aloud = holdFigure(saidNutrient(statement, factor, true), statement.hedge, figure);
  return aloud.verdict === 'agrees'
    ? '; said aloud it would agree, since round numbers are said less exactly than they are written'
    : tallied;
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
