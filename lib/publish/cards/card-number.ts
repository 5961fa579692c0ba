import type { EpisodeFigures } from '#lib/figures/episode-figures';
import {
  figuresFor,
  type NumberScope,
  type PublishedNumber,
  type PublishedNumbers,
} from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { Nutrient } from '#lib/foods/nutrients';
import type { CardNumber } from '#lib/publish/cards/card';
import { markOf } from '#lib/publish/number-mark';

/** What numbers are taken from. */
export interface NumbersOfCards {
  readonly figures: EpisodeFigures;
  readonly numbers: PublishedNumbers;
}

/** Energy and macros of a scope, with the remarks that they need. */
export interface ScopeNumbers {
  readonly lead: CardNumber;
  readonly others: readonly CardNumber[];
  readonly notes: readonly string[];
  /** Of the notes, what marks mean. */
  readonly meanings: readonly string[];
  /** Whether any of them is open. */
  readonly open: boolean;
}

const MEANT = {
  said: '† as said in the video; the ingredients say otherwise',
  clashes: '† as said in the video; it does not add up with the others that were said',
  rounding: '* adds up only because of rounding',
} as const;

/** What the marks of numbers mean, each once. */
export function meaningsOf(all: readonly PublishedNumber[]): readonly string[] {
  const meant = all.flatMap((number) => {
    const mark = markOf(number);
    if (mark === '') return [];
    if (mark === '*') return ['rounding'] as const;
    return [number.said?.outside ? ('said' as const) : ('clashes' as const)];
  });
  return (['said', 'clashes', 'rounding'] as const)
    .filter((each) => meant.includes(each))
    .map((each) => MEANT[each]);
}

/** The numbers of a scope, and what is to be said of them: why some are open or 'at least', what their marks mean. */
export function scopeNumbers(of: NumbersOfCards, scope: NumberScope): ScopeNumbers {
  const [energy, ...macros] = HEADLINE_NUTRIENTS;
  const all = HEADLINE_NUTRIENTS.map((nutrient) => of.numbers(nutrient, scope));
  const meanings = meaningsOf(all);
  const reasons = all
    .filter(({ status }) => status !== 'known')
    .map(({ status, range }) => `${status === 'open' ? 'open: ' : ''}${range}`);
  const kilojoules = of.figures.region === 'EU' ? of.numbers('energyKj', scope) : null;
  return {
    lead: {
      ...cardNumber(of, energy, scope),
      // Regulation (EU) 1169/2011, Annex XV, names kJ beside kcal.
      label: kilojoules?.number == null ? '' : `${kilojoules.text} kJ`,
    },
    others: macros.map((nutrient) => cardNumber(of, nutrient, scope)),
    notes: [...new Set([...reasons, ...meanings])],
    meanings,
    open: all.some(({ number }) => number === null),
  };
}

/** One number of a scope. */
export function cardNumber(of: NumbersOfCards, nutrient: Nutrient, scope: NumberScope): CardNumber {
  const { number, text, unit, label, range, status } = of.numbers(nutrient, scope);
  const figure = figuresFor(of.figures, scope)?.[nutrient];
  const isKnown = status === 'known';
  const likely = /^likely [^,]*/.exec(range)?.[0] ?? '';
  return {
    label: nutrient === 'energyKcal' ? '' : label,
    hedge: number === null ? '' : text.slice(0, text.length - number.length).trim(),
    number: number === null ? null : number + markOf(of.numbers(nutrient, scope)),
    unit: number === null && nutrient === 'energyKcal' ? label : unit,
    // What the digits allow beyond the likely range is for the page, not for the picture.
    range: isKnown && likely !== `likely ${text}` ? likely : '',
    whisker: number === null || !figure ? null : figure,
  };
}

/** `846 kcal · 112 g protein · 41 g fat`: the numbers of a scope in a line. */
export function numbersInLine({ lead, others }: Pick<ScopeNumbers, 'lead' | 'others'>): string {
  return [lead, ...others]
    .map(({ hedge, number, unit, label }) => {
      if (number === null) return `${label === '' ? unit : label} open`;
      const of = label === '' || label.endsWith('kJ') ? [] : [label];
      return [hedge, number, unit, ...of].filter((part) => part !== '').join(' ');
    })
    .join(' · ');
}
