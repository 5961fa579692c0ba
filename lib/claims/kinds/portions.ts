import { pausedFood } from './bare-measures';
import { isMade } from './counted-pieces';
import { lastBefore, markBefore, markBehind } from '../words/context';
import { endWithNoun, type Quantity, type Said } from '../numbers/quantity';
import { phraseAt } from '../words/phrases';
import { only, type Text } from '../words/text';

/** Tokens in which a part that was said is still counted. */
const PART_REACH = 30;
/** Tokens from a verb that shapes pieces to how many there are. */
const SHAPED = 14;
/** Slices of a food that go in, where more are what a dish is cut into. */
const FEW_SLICES = 4;
/** Tokens from how many there are to what each of them has. */
const EACH = 12;
const MOST_PIECES = 60;

/** How many portions, pieces or slices the dish makes; null where a number says no such thing. */
export function portionsOf(
  text: Text,
  quantity: Quantity,
  before: Quantity | undefined,
): Said | null {
  if (quantity.unit !== null || quantity.noun !== null || quantity.fraction) return null;
  if (!Number.isInteger(quantity.low) || quantity.high > 200 || quantity.low < 1) return null;
  const { marks } = text;
  const serve = markBefore(text, quantity, 'serve', 3);
  const first =
    serve && only(text, serve.to, quantity.begin, ['filler', 'hedge', 'copula', 'small'])
      ? serve.role.as
      : null;
  let adjective = 0;
  while (adjective < 3 && isAdjective(text, quantity.end + adjective)) adjective += 1;
  const headed = headOf(text, quantity);
  if (headed) return { kind: 'portions', unit: headed };
  const thing =
    marks.at('thing', quantity.end) ??
    (adjective ? marks.at('thing', quantity.end + adjective) : undefined) ??
    ownPieces(text, quantity, first);
  // 'four lunches out of one pot'
  const out = marks.at('outOf', thing?.to ?? quantity.end);
  // '10 meals for $23'
  const paid = thing && marks.at('serveTitle', thing.to) && isMoney(text, thing.to + 1);
  const price =
    before?.said?.kind === 'price' &&
    before.said.food === undefined &&
    quantity.begin - before.end === 1;
  // 'seven dollars fifty for six burritos'
  const bought = price && marks.before('serveTitle', quantity.begin) && quantity.low > 1;
  const led = first ?? (out || paid || (thing && bought) ? 'any' : null);
  const as = servedAs(thing?.role.as, led, out !== undefined && quantity.low > 1);
  if (as === undefined && thing?.role.as === 'meal') return null;
  if (!thing && out && quantity.low > 1) {
    const head = titleHead(text);
    const as = head === null ? undefined : phraseAt(text.language.lexicon, head, 0)?.value;
    const part = as?.find((role) => role.cat === 'thing');
    const unit = part?.cat === 'thing' && UNITS.has(part.as) ? part.as : 'portion';
    return { kind: 'portions', unit };
  }
  const again = ofThem(text, quantity, led);
  if (again) return again;
  // '420 calories, and that's three pancakes' says of how many the numbers are.
  if (thing && quantity.low <= FEW && isOfRow(text, quantity, before)) return null;
  const eat = thing && markBefore(text, quantity, 'eat', 1);
  // 'if you have two bowls' says what somebody eats, and not how many there are.
  if (eat && (led === null || (serve && eat.from < serve.from))) return null;
  // 'thirty six carbs, that's for two bowls'
  const ofPart = led === 'any' && before?.said?.kind === 'nutrient';
  if (ofPart && marks.before('serveTitle', quantity.begin)) return null;
  // 'bread, two slices'
  const sliced = led === null && as === 'slice' && quantity.low <= FEW_SLICES;
  const loaf = sliced ? pausedFood(text, quantity, 0) : null;
  if (thing && loaf) {
    quantity.end = thing.to;
    return { kind: 'amount', unit: 'piece', food: loaf.name };
  }
  if (thing && as && as !== 'whole' && as !== 'person') {
    if (!counts(text, quantity, thing.to, as, led, before)) return null;
    quantity.end = thing.to;
    return { kind: 'portions', unit: as };
  }
  if (as === 'person' || marks.at('serveBehind', quantity.end)) {
    const fed =
      led === 'portion' ||
      led === 'slice' ||
      (as === 'person' && quantity.low > 1 && isFor(text, quantity.begin)) ||
      markBehind(text, thing?.to ?? quantity.end, 'serveBehind', 0);
    if (!fed || marks.at('who', thing?.to ?? quantity.end)) return null;
    if (thing) quantity.end = thing.to;
    return { kind: 'portions', unit: led === 'slice' ? 'slice' : 'portion' };
  }
  // 'makes twelve chapatis'
  const who = text.tokens[(serve?.from ?? 0) - 1]?.folded ?? '';
  const person = text.language.claims.persons.has(who);
  const made = serve?.role.as === 'piece' && first === 'piece' && !person && quantity.low > 1;
  if (made && !thing && isPlural(text, quantity.end)) {
    quantity.end += 1;
    return { kind: 'portions', unit: 'piece' };
  }
  // 'under a fiver for four'
  if (
    (text.context.form === 'title' || price) &&
    marks.before('serveTitle', quantity.begin) &&
    quantity.low > 1 &&
    isBare(text, quantity)
  ) {
    return { kind: 'portions', unit: 'portion' };
  }
  const dozen = text.language.numbers.counts.get(text.tokens[quantity.to - 1]?.folded ?? '') === 12;
  // 'for 4' on a line of its own
  if (isForLine(text, quantity)) return { kind: 'portions', unit: 'portion' };
  // 'serves four, or two with ambitions'
  const served = before?.said?.kind === 'portions' ? before.said.unit : null;
  if (before && served !== null && isOther(text, quantity, before))
    return { kind: 'portions', unit: served };
  // 'roll them small and you get twenty two'
  const shaped = quantity.low > 3 && lastBefore(text, quantity.begin, 'shape', SHAPED);
  const few = quantity.low > 3 && quantity.low <= MOST_PIECES && !quantity.parts;
  const at = text.marks.at('scope', quantity.end);
  const each = few && !at && text.marks.firstIn('scope', quantity.end, quantity.end + EACH)?.role;
  const pieces = each && (each.link === 'counted' || each.scope === 'each');
  if (led === 'any' && (dozen || shaped || pieces) && isBare(text, quantity))
    return { kind: 'portions', unit: 'piece' };
  if (led === null || led === 'any' || as === 'whole') return null;
  const fed = serve?.role.as === 'portion' && isFed(text, quantity);
  if (!fed && !isBare(text, quantity)) return null;
  // 'per portion (makes 5)'
  const part = serve && lastBefore(text, serve.from, 'scope', 3)?.role.scope;
  const unit = led === 'piece' && part === 'portion' ? part : led;
  const cut = led === 'slice' || led === 'piece' ? partAhead(text, quantity) : null;
  return { kind: 'portions', unit: cut ?? unit };
}

/** Tokens from how many it is cut into to the part that each of them is called. */
const CALLED = 8;

/** 'I cut it into eight, so a portion is', 'cut into 12. One bar is': what is cut is no slice where it is called so. */
function partAhead({ marks }: Text, { end }: Quantity): 'portion' | 'piece' | null {
  const part = marks.firstIn('scope', end, end + CALLED)?.role;
  if (part?.scope === 'portion') return 'portion';
  return part?.scope === 'each' && part.link !== 'counted' ? 'piece' : null;
}

/** 'Pots: 5', 'Slices – 12': what is counted stands before the number, at the beginning of a line or sentence. */
function headOf(text: Text, quantity: Quantity) {
  const { marks, tokens, spoken } = text;
  const { begin } = quantity;
  if (spoken || !/^[:–—-]$/.test(tokens[begin - 1]?.text ?? '') || !isBare(text, quantity)) return;
  const mark = marks.before('thing', begin - 1);
  const first = mark && tokens[mark.from - 1];
  if (!mark || (first && first.kind !== 'line' && !/^[.|•·,;/(–-]$/.test(first.text))) return;
  if (text.language.singular(tokens[begin - 2]?.folded ?? '') === tokens[begin - 2]?.folded) return;
  const { as } = mark.role;
  if (as === 'whole') return quantity.low > 1 ? 'portion' : undefined;
  return as === 'portion' || as === 'slice' || as === 'piece' ? as : undefined;
}

function isForLine({ spoken, tokens, marks }: Text, { begin, end, low }: Quantity): boolean {
  const line = (at: number) => tokens[at] === undefined || tokens[at]?.kind === 'line';
  if (spoken || marks.before('serveTitle', begin)?.from !== begin - 1) return false;
  // 'Egg Curry for Two', 'Terrine for twelve: 1 kg pork'
  const heads = begin <= HEADING && tokens.slice(0, begin - 1).every(({ kind }) => kind === 'word');
  if (heads && begin > 1 && low <= MOST_FED)
    return line(end) || /^[:.,]$/.test(tokens[end]?.text ?? '');
  return line(begin - 2) && line(end);
}

/** Tokens of the heading of a recipe, and persons that it is for. */
const HEADING = 8;
const MOST_FED = 20;

/** Tokens from a number of portions to another one that it may be as well. */
const OTHER = 3;

function isOther(text: Text, { begin, end }: Quantity, before: Quantity): boolean {
  const or = text.language.numbers.either.has(text.tokens[begin - 1]?.folded ?? '');
  const next =
    text.marks.at('so', end) ?? text.marks.at('small', end) ?? text.marks.at('joiner', end);
  return or && begin - before.end <= OTHER && next !== undefined;
}

/** Pieces that somebody eats at once, and tokens between them and the numbers that are said of them. */
const FEW = 4;
const ROW = 5;

function isOfRow({ marks }: Text, { begin }: Quantity, before: Quantity | undefined): boolean {
  const near = before?.said?.kind === 'nutrient' && begin - endWithNoun(before) <= ROW;
  return near && marks.before('which', begin) !== undefined;
}

/** A word in the plural that is no unit and no nutrient. */
function isPlural({ tokens, language, marks }: Text, at: number): boolean {
  const word = tokens[at];
  if (word?.kind !== 'word' || language.singular(word.folded) === word.folded) return false;
  return ['unit', 'noun', 'trapBehind', 'copula', 'small'].every(
    (category) => !marks.at(category as 'unit', at),
  );
}

/** Meals are portions where they are made, vessels where so many come out of one dish: 'six pots out of this'. */
function servedAs(
  as: 'portion' | 'slice' | 'piece' | 'whole' | 'person' | 'meal' | undefined,
  led: string | null,
  several: boolean,
) {
  if (as === 'meal') return led === null ? undefined : 'portion';
  return as === 'whole' && several ? 'portion' : as;
}

/** 'there's eight of those', where slices, pieces or portions were said just before. */
function ofThem(text: Text, quantity: Quantity, led: string | null): Said | null {
  if (led === null || quantity.low < 2 || !text.marks.at('ofThem', quantity.end)) return null;
  if (led === 'piece') return { kind: 'portions', unit: 'piece' };
  const { begin } = quantity;
  const part = text.marks.lastIn('scope', begin - PART_REACH, begin)?.role;
  const unit =
    part?.scope === 'slice' || part?.scope === 'portion'
      ? part.scope
      : part?.scope === 'each'
        ? 'piece'
        : null;
  return unit && { kind: 'portions', unit };
}

/** 'serves six comfortably': any word may follow but what would be counted. */
function isFed({ marks, tokens, food }: Text, { end, begin }: Quantity): boolean {
  const verb = marks.before('serve', begin);
  const counted =
    marks.at('trapBehind', end) ?? marks.at('unit', end) ?? marks.at('noun', end) ?? food(end);
  return verb !== undefined && !counted && tokens[end]?.kind === 'word';
}

/** A word for how it is: 'twelve big muffins'; no article. */
const isAdjective = ({ language, marks, tokens }: Text, at: number) => {
  const word = tokens[at]?.folded ?? '';
  const plain = language.foods.plain.has(word) && !marks.at('filler', at) && !marks.at('small', at);
  return plain || language.adjectives.has(word);
};

/** Pieces that have the name of the dish: '10 fritters' of zucchini fritters. */
function ownPieces(
  { title, tokens, language, marks, food }: Text,
  { end }: Quantity,
  led: string | null,
) {
  if (led === 'portion' || (led === null && food(end) !== null)) return undefined;
  const first = tokens[end]?.folded ?? '';
  // 'a hundred and thirty a taco'
  if (language.numbers.article.has(first)) return undefined;
  const plain = language.foods.plain.has(first) ? end + 1 : end;
  for (const at of [plain, plain + 1]) {
    if (at > plain && (marks.at('filler', plain) ?? marks.at('small', plain))) break;
    const word = language.singular(tokens[at]?.folded ?? '');
    if (word !== '' && title.stems.at(-1) === word && !marks.at('unit', at)) {
      return { role: { cat: 'thing' as const, as: 'piece' as const }, from: at, to: at + 1 };
    }
  }
  return undefined;
}

function counts(
  text: Text,
  quantity: Quantity,
  to: number,
  as: string,
  led: string | null,
  before: Quantity | undefined,
): boolean {
  if (led !== null) return quantity.low > 1 || led !== 'any';
  if (quantity.low < 2) return false;
  if (as === 'piece') return isMade(text, quantity, to, before);
  // 'two bowls is double that': what the person eats; 'a slice of' another food is an amount.
  const copula = markBehind(text, to, 'copula', 0);
  const next = text.marks.at('ofThem', to) || text.tokens[to]?.folded === undefined;
  if (copula && !/[:=]/.test(text.tokens[copula.from]?.text ?? '')) return false;
  return next !== undefined && !isOfFood(text, to);
}

/** 'for two people', 'for the eight of us'. */
const isFor = ({ marks }: Text, begin: number) =>
  (marks.before('serveTitle', begin) ??
    marks.before('serveTitle', marks.before('filler', begin)?.from ?? -1)) !== undefined;

const isMoney = ({ tokens, language, marks }: Text, at: number) =>
  language.currencies.has(tokens[at]?.text ?? '') ||
  marks.firstIn('unit', at, at + 4)?.role.of === 'money';

const UNITS: ReadonlySet<string> = new Set(['slice', 'piece']);

/** The last word of the dish's title as a token. */
function titleHead({ title }: Text) {
  const last = title.tokens.at(-1);
  return last ? [last] : null;
}

function isOfFood({ language, tokens, food }: Text, to: number): boolean {
  return language.numbers.of.has(tokens[to]?.folded ?? '') && food(to + 1) !== null;
}

function isBare({ marks, tokens, food }: Text, { end }: Quantity): boolean {
  if (marks.at('trapBehind', end) || food(end) || marks.at('unit', end)) return false;
  const token = tokens[end];
  return (
    token?.kind !== 'word' ||
    (
      ['small', 'so', 'joiner', 'copula', 'correct', 'scope', 'which', 'filler', 'hedge'] as const
    ).some((category) => marks.at(category, end))
  );
}
