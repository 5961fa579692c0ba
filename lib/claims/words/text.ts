import { joinBroken } from './broken-captions';
import { foodAt, type FoodSpan } from './foods';
import { withoutCapitals, withoutHesitations, withoutNotes } from './caption-noise';
import type { Language } from '../language';
import { macroSentences } from './macros';
import { Marks } from './marks';
import { sentencesOf, type Sentences } from './sentences';
import type { TextContext } from '../statement';
import { partRows } from './stroke-rows';
import { titleOf, type Title } from './title';
import { asSpoken, tokenize, type Token } from './tokens';

/** A text with what the language knows of its words. */
export interface Text {
  readonly text: string;
  readonly context: TextContext;
  readonly language: Language;
  readonly spoken: boolean;
  readonly tokens: readonly Token[];
  readonly marks: Marks;
  readonly sentences: Sentences;
  /** Of the dish that is talked about, without words where none is; and of all dishes that are known. */
  readonly title: Title;
  readonly titles: readonly Title[];
  /** The currency of the text, where it names one only. */
  readonly currency: () => string | undefined;
  /** Sentences in which single letters stand for macronutrients. */
  readonly macros: () => ReadonlySet<number>;
  /** The first token that points at a dish: 'it', 'this'; infinite where none does. */
  readonly pointedFrom: () => number;
  /** The food whose name, or the words before it, begin at a token. */
  readonly food: (at: number) => FoodSpan | null;
}

/** Tokens, phrases and sentences of a text; captions run on over their lines. */
export function prepare(text: string, context: TextContext, language: Language): Text {
  const captions = context.form === 'captions';
  const all = tokenize(partRows(captions ? withoutCapitals(text) : text, language));
  const spoken = captions || context.form === 'talkingPoint';
  const tokens = captions ? asCaptions(all, language) : all;
  const known = new Array<FoodSpan | null | undefined>(tokens.length).fill(undefined);
  const food = (at: number) => {
    if (at < 0 || at >= tokens.length) return null;
    let found = known[at];
    if (found === undefined) known[at] = found = foodAt(tokens, at, language);
    return found;
  };
  const title = titleOf(context.dish ?? '', language);
  const others = new Set(context.dishes?.filter((dish) => dish !== context.dish));
  const titles = [
    ...(context.dish === undefined ? [] : [title]),
    ...[...others].map((other) => titleOf(other, language)),
  ];
  const parts = titles.flatMap((each) =>
    [language.titleParts(each), language.titleVessels(each)].filter((part) => part !== null),
  );
  const marks = new Marks(tokens, [...parts, language.lexicon], language.adjectives);
  const sentences = sentencesOf(tokens, language.shortened);
  let macros: ReadonlySet<number> | undefined;
  let pointed: number | undefined;
  let currency: { readonly only: string | undefined } | undefined;
  return {
    text,
    context,
    language,
    spoken,
    tokens,
    marks,
    title,
    titles,
    currency: () => (currency ??= { only: onlyCurrency(tokens, marks, language) }).only,
    macros: () => (macros ??= macroSentences({ tokens, marks, language, sentences, spoken })),
    pointedFrom: () => (pointed ??= firstPointing(tokens, language)),
    sentences,
    food,
  };
}

function firstPointing(tokens: readonly Token[], { claims }: Language): number {
  const first = tokens.findIndex(({ folded }) => claims.pointing.has(folded));
  return first < 0 ? Infinity : first;
}

/** The words of captions as they were spoken. */
function asCaptions(all: readonly Token[], language: Language): Token[] {
  const spoken = asSpoken(withoutNotes(all));
  return joinBroken(withoutHesitations(spoken, language), language);
}

function onlyCurrency(
  tokens: readonly Token[],
  marks: Marks,
  { currencies, moneyUnits, moneyLetters, numbers }: Language,
): string | undefined {
  // Cents are of more than one money, pence of one.
  const own = [...moneyUnits.values()];
  const named = marks
    .all('unit')
    .flatMap(({ role }) =>
      role.of === 'money' && (role.factor >= 1 || own.includes(role.unit)) ? [role.unit] : [],
    );
  // 'seven pounds the pot', 'three pounds fifteen'
  const pounds = marks.all('unit').flatMap(({ role, to }) => {
    const unit = moneyUnits.get(role.unit ?? '');
    const cents = numbers.cardinals.get(tokens[to]?.folded ?? '') ?? 0;
    return unit !== undefined && (cents >= 10 || marks.at('scope', to)) ? [unit] : [];
  });
  named.push(...pounds);
  const signs = tokens.flatMap(({ text }) => currencies.get(text) ?? []);
  // 'eighty nine p'
  const letters = tokens.flatMap(({ text }, at) => {
    const unit = moneyLetters.get(text)?.unit;
    return unit !== undefined && numbers.cardinals.has(tokens[at - 1]?.folded ?? '') ? [unit] : [];
  });
  const all = new Set([...named, ...signs, ...letters]);
  return all.size === 1 ? [...all][0] : undefined;
}

/** Whether all tokens of a stretch are of marks of some categories, or none is there. */
export function only(
  { marks }: Text,
  from: number,
  to: number,
  categories: readonly Parameters<Marks['at']>[0][],
): boolean {
  if (from >= to) return true;
  let at = from;
  while (at < to) {
    const here = at;
    let next = at;
    for (const category of categories) {
      const mark = marks.at(category, here);
      if (mark && mark.to <= to) next = Math.max(next, mark.to);
    }
    if (next === at) return false;
    at = next;
  }
  return at === to;
}
