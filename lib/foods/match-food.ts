import { saysCooked } from '#lib/foods/guess-state';
import { matchWord } from '#lib/foods/match-word';
import {
  ASIDE,
  ASIDE_IN,
  FAT_LEVELS,
  FAT_SECTIONS,
  FORMS,
  KEPT,
  KINDS,
  OPPOSITES,
  STANDS_IN,
  STATES_SAID,
  USUAL,
} from '#lib/foods/match-words';
import { nameParts } from '#lib/foods/name-parts';
import { namesBrand } from '#lib/foods/names-brand';
import { judgeShare, saidShares, type SaidShare } from '#lib/foods/said-shares';
import { PLAIN, type SearchDocument, type SearchEntry } from '#lib/foods/search-document';
import { queryKey, queryReadings, queryWords, type SearchHit } from '#lib/foods/search-index';
import { words, type Word } from '#lib/foods/search-text';
import { fold } from '#lib/units/plain-words';

/** What an ingredient's words say of the food that is meant. */
export interface SaidFood {
  /** As they are searched for. */
  readonly query: string;
  /** Folded, for what is said in several words. */
  readonly folded: string;
  /** Without shares, in each way to read them. */
  readonly readings: readonly (readonly Word[])[];
  readonly shares: readonly SaidShare[];
  readonly fatLevel: FatLevel | null;
  /** The singulars of the words that say it. */
  readonly fatWords: ReadonlySet<string>;
  /** The singulars of what stands before 'in oil', 'with salt': among them what it is. */
  readonly heads: ReadonlySet<string>;
  /** The singulars of all words, in every way to read them. */
  readonly stems: ReadonlySet<string>;
  /** The words that say which food it is in each reading, as one text of singulars. */
  readonly names: ReadonlySet<string>;
}

type FatLevel = (typeof FAT_LEVELS)[number][0];

/** What the search knows of words, beside the foods that it finds. */
export interface KnownWords {
  readonly isKnown: (stem: string) => boolean;
  /** Numbers of the foods that a synonym names for all of these words. */
  readonly named: (key: string) => ReadonlySet<string>;
}

/** How a food goes with an ingredient's words: it may be meant, it lacks something, or something rules it out. */
export type Fit = 'fits' | 'near' | 'against';

export interface Match {
  readonly hit: SearchHit;
  readonly fit: Fit;
  readonly score: number;
}

/**
 * An ingredient's words as they are held against foods.
 * @example saidFood('Greek yogurt 2%', known).shares // [{ of: 'bare', percent: 2 }]
 */
export function saidFood(text: string, { isKnown }: Pick<KnownWords, 'isKnown'>): SaidFood {
  const { shares, rest: all } = saidShares(text);
  const folded = fold(all);
  const rest = all.replace(WITH_SKIN, ' ').replace(GRADE, ' ').replace(SPRING, ' ').trim();
  const percents = shares.map(({ percent }) => percent).filter(Number.isInteger);
  const fatLevel = fatLevelOf(folded);
  const readings = queryReadings(queryWords(rest), isKnown);
  return {
    query: [rest, ...percents].join(' '),
    folded,
    readings,
    shares,
    fatLevel,
    fatWords: fatLevel === null ? new Set() : wordsOfLevel(folded, fatLevel),
    heads: new Set(
      queryWords(rest.split(/\s(?:in|with|from|for)\s/i)[0] ?? '').map(({ stem }) => stem),
    ),
    stems: new Set(readings.flat().map(({ stem }) => stem)),
    names: new Set(readings.map((reading) => stemsText(naming(reading)))),
  };
}

/** Said of the skin, which is no word of a name by itself: a part of a bird is 'skin'. */
const WITH_SKIN = /\b(?:skin[- ]on|with(?:out)? (?:the )?skin|no skin)\b/gi;

/** How strong it is or how long it was kept, which no name in the table says: the beans that it calls mature are ripe. */
const GRADE =
  /\b(?:extra[- ])?(?:mature|vintage|mild|aged)\b|\b(?:extra[- ])?strong\b(?=.*\b(?:cheddar|cheese)\b)/gi;
/** Water is water in whatever it is packed. */
const SPRING = /\bspring(?= water\b)/gi;

/** On for a food that the synonyms name for these words but for their state and what is said aside. */
const NAMED = 0.3;
/** On where both say that it was drained. */
const DRAINED = 0.1;
/** On where a part of the name is all that was said, in its order: 'milk chocolate' is no chocolate milk. */
const WHOLE_PART = 0.1;
/** On for the food that the table calls the usual one. */
const IS_USUAL = 0.1;
/** Off for each form that was not said. */
const UNSAID_FORM = 0.05;
/** Off where what was said last is not in the name: 'vanilla whey' is no vanilla extract. */
const LACKS_HEAD = 0.5;
/** Off for a brand that nobody said: any plain food comes before it. */
const UNSAID_BRAND = 1;

/**
 * The foods that a search found for an ingredient's words, those that may be meant first. A food fits where its name
 * has all that was said, where what was said last is a whole part of its name ('flour tortillas' is no 'tortilla
 * mix', 'corn' no 'corn with peppers'), where the part it begins with was said or is only a kind ('Nuts, almonds'),
 * and where no brand stands in it that nobody said. What was said and is otherwise in the name rules it out.
 * @example rankMatches(saidFood('frozen peas', known), hits, known)[0]?.hit.entry.name // 'Peas, green, frozen, unprepared'
 */
export function rankMatches(
  said: SaidFood,
  hits: readonly SearchHit[],
  known: KnownWords,
): readonly Match[] {
  const named = new Set(
    said.readings.flatMap((reading) => [
      ...known.named(queryKey(reading)),
      ...known.named(queryKey(naming(reading).filter(({ stem }) => !STATES_SAID.has(stem)))),
    ]),
  );
  const saysDrained = /\bdrained\b/.test(said.folded);
  const matches = hits.map((hit): Match => {
    const isNamed = named.has(hit.entry.sourceNo) && hit.entry.sourceNo !== '';
    const drained = saysDrained && /\bdrained\b/i.test(hit.entry.name);
    return {
      hit,
      fit: fitOf(said, hit.document, isNamed, known),
      score:
        hit.score +
        (isNamed ? NAMED : 0) +
        (drained ? DRAINED : 0) +
        (USUAL.test(hit.entry.name) ? IS_USUAL : 0) +
        (isWholePart(said, hit.entry.name) ? WHOLE_PART : 0) -
        (isUnsaidBrand(said, hit.entry) ? UNSAID_BRAND : 0) -
        (hasHead(said, hit.document, known) ? 0 : LACKS_HEAD) -
        UNSAID_FORM * unsaidForms(said, hit.entry.name),
    };
  });
  return matches.sort((a, b) => FIT_ORDER[a.fit] - FIT_ORDER[b.fit] || b.score - a.score);
}

const FIT_ORDER: Readonly<Record<Fit, number>> = { fits: 0, near: 1, against: 2 };

function isWholePart({ names }: SaidFood, name: string): boolean {
  return nameParts(name).some(({ ways }) => ways.some((way) => names.has(way.join(' '))));
}

function unsaidForms({ stems }: SaidFood, name: string): number {
  const own = words(name.replace(/\bnot [a-z-]+/gi, ' '));
  return own.filter(({ stem }) => FORMS.has(stem) && !stems.has(stem)).length;
}

function fitOf(said: SaidFood, document: SearchDocument, isNamed: boolean, known: KnownWords): Fit {
  const { entry } = document;
  if (isAgainst(said, document)) return 'against';
  if (!keptAsSaid(said, document)) return 'near';
  if (isNamed) return 'fits';
  if (isUnsaidBrand(said, entry)) return 'near';
  const fits = said.readings.some((reading) => holds(reading, said, document, known));
  return fits ? 'fits' : 'near';
}

/** Whether what was said last, of what says which food it is, is in a name. */
function hasHead(said: SaidFood, { words: own }: SearchDocument, known: KnownWords): boolean {
  return said.readings.some((reading) => {
    const head = headOf(naming(reading), said);
    return head === undefined || own.some((word) => isSame(head, word, known));
  });
}

function headOf(asked: readonly Word[], { heads }: SaidFood): Word | undefined {
  return asked.filter(({ stem }) => heads.has(stem)).at(-1) ?? asked.at(-1);
}

/** Whether something that was said rules a food out. */
function isAgainst(said: SaidFood, { entry }: SearchDocument): boolean {
  const name = fold(entry.name);
  if (OPPOSITES.some(([mine, other]) => mine.test(said.folded) && other.test(name))) return true;
  if (/\b(?:raw|dry|uncooked)\b/.test(said.folded) && saysCooked(name)) return true;
  if (saysCooked(said.folded) && /\b(?:raw|uncooked|unprepared)\b/.test(name)) return true;
  // Nobody drains what was never wet.
  const isDry = entry.section === 'dryGoods' && /\b(?:raw|dry)\b/.test(name);
  if (isDry && /\bdrained\b/.test(said.folded)) return true;
  const level = FAT_SECTIONS.has(entry.section) ? fatLevelOf(name) : null;
  if (said.fatLevel !== null && level !== null && level !== said.fatLevel) return true;
  const food = { name: entry.name, fatIsMeant: false, fatIn100: null };
  return said.shares.some((share) => judgeShare(share, food) === 'against');
}

/** How much of its fat is left in a food, as folded words say it; null where they do not. */
export function fatLevelOf(folded: string): FatLevel | null {
  return FAT_LEVELS.find(([, level]) => level.test(folded))?.[0] ?? null;
}

function isUnsaidBrand({ folded }: SaidFood, { name, own, product }: SearchEntry): boolean {
  if (own || (!product && !namesBrand(name))) return false;
  const brand = name.match(/[A-Z][A-Z&.'’-]*[A-Z.]/g) ?? [];
  return !brand.some((word) => folded.includes(fold(word)));
}

/** The words that say which food it is. */
function naming(reading: readonly Word[]): Word[] {
  return reading.filter(({ stem }) => !ASIDE.has(stem));
}

function stemsText(said: readonly Word[]): string {
  return said.map(({ stem }) => stem).join(' ');
}

/** Whether a name has all that was said, the last of it as a whole part. */
function holds(
  reading: readonly Word[],
  said: SaidFood,
  document: SearchDocument,
  known: KnownWords,
): boolean {
  const level = FAT_SECTIONS.has(document.entry.section) ? said.fatLevel : null;
  if (level !== null && fatLevelOf(fold(document.entry.name)) !== level) return false;
  const aside = ASIDE_IN.get(document.entry.section);
  const asked = naming(reading).filter(
    ({ stem }) => (level === null || !said.fatWords.has(stem)) && !(aside?.has(stem) ?? false),
  );
  const head = headOf(asked, said);
  if (!head) return false;
  const covered = new Set<string>(reading.map(({ stem }) => stem));
  let headStems: ReadonlySet<string> = new Set();
  // 'bean' alone is no 'broad bean'.
  const own = document.words.filter(
    ({ alias }) => alias?.every((stem) => covered.has(stem)) ?? true,
  );
  for (const word of reading) {
    const found = own.filter((each) => isSame(word, each, known));
    if (found.length === 0 && asked.includes(word)) return false;
    const stems = found.flatMap(({ stem, replaces = [] }) => [stem, ...replaces]);
    for (const stem of stems) covered.add(stem);
    if (word === head) headStems = new Set(stems);
  }
  const parts = nameParts(document.entry.name);
  const [first] = parts;
  if (!first) return false;
  if (document.entry.own) return first.ways.some((way) => covered.has(way.at(-1) ?? ''));
  const kind = new Set(first.isKind ? first.ways.flat() : []);
  const isSaid = (way: readonly string[]) =>
    way.every((stem) => covered.has(stem) || PLAIN.has(stem) || kind.has(stem));
  if (!first.isKind && !first.ways.some(isSaid)) return false;
  // 'oil' alone is no 'Oil, coconut', 'cream' no 'Cheese, cream'.
  const isOfKind = asked.every(({ stem }) => kind.has(stem));
  if (isOfKind && !parts.every(({ ways }) => ways.some(isSaid))) return false;
  if (!isOfKind && first.isKind && KINDS.has(stemsText(asked))) return false;
  if (standsIn(document.entry.name, covered)) return false;
  return parts.some(({ ways, isKind }) =>
    ways.some((way) => (isKind || isSaid(way)) && way.some((stem) => headStems.has(stem))),
  );
}

/** Whether a typed word is one of a name's: the same, or with a slip where nothing is called so. */
function isSame(typed: Word, own: Word, { isKnown }: KnownWords): boolean {
  if (typed.stem === own.stem || typed.written === own.written) return true;
  if (isKnown(typed.stem) || isKnown(typed.written)) return false;
  return (
    matchWord(typed.written, own.written, false, true) > 0 ||
    matchWord(typed.written, own.stem, false, true) > 0
  );
}

function wordsOfLevel(folded: string, level: FatLevel): ReadonlySet<string> {
  const found = FAT_LEVELS.filter(([of]) => of === level).flatMap(
    ([, pattern]) => pattern.exec(folded)?.[0] ?? [],
  );
  return new Set(queryWords(found.join(' ')).map(({ stem }) => stem));
}

/** Whether a food was kept and made ready as was said: dried, in a can, frozen, cooked. */
function keptAsSaid({ folded }: SaidFood, { entry }: SearchDocument): boolean {
  const name = fold(entry.name);
  if (saysCooked(folded) && !saysCooked(name)) return false;
  return KEPT.every(([mine, kept]) => !mine.test(folded) || kept.test(name));
}

/** Whether a name says that the food stands in for the one that was said. */
function standsIn(name: string, covered: ReadonlySet<string>): boolean {
  const [found] = STANDS_IN.exec(name.replace(/^seasoning mix/i, '')) ?? [];
  if (found === undefined) return false;
  const stems = queryWords(found).map(({ stem }) => stem);
  return stems.length === 0 || !stems.every((stem) => covered.has(stem));
}
