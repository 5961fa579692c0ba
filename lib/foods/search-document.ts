import type { Section } from '#lib/foods/food';
import { namesBrand } from '#lib/foods/names-brand';
import type { SearchSynonym } from '#lib/foods/search-synonyms';
import { words, type Word } from '#lib/foods/search-text';

/** What the search needs to know of a food. */
export interface SearchEntry {
  readonly id: string;
  readonly name: string;
  readonly sourceNo: string;
  readonly section: Section;
  /** The person's own food: it comes before the table's, whatever its name looks like. */
  readonly own?: boolean;
  /** A product of one maker: it stands behind as foods do whose names name a brand. */
  readonly product?: boolean;
}

/** A word of a food's name: where it stands, and how much it narrows down the food if not asked for. */
export interface DocumentWord extends Word {
  /** Number of the part between commas, from 0. */
  readonly segment: number;
  readonly weight: number;
  /** Of a word of another name: all words of that, and those of the own name in whose place it stands. */
  readonly alias?: readonly string[];
  readonly replaces?: readonly string[];
}

/** A food prepared for the search. */
export interface SearchDocument {
  readonly entry: SearchEntry;
  readonly words: readonly DocumentWord[];
  /** Sum of the weights of the name's own words. */
  readonly totalWeight: number;
  /** What the food is behind by before any query: brands, restaurants, infant and manufactured foods. */
  readonly prior: number;
  readonly isRaw: boolean;
}

/** Words of which cooks think anyway, so that they don't make a food special. */
export const PLAIN: ReadonlySet<string> = new Set(
  'raw fresh whole plain regular common all commercial commercially variety ripe red mature seed year round average table salad cooking unprepared enriched fluid skin skinless boneless meat only broiler fryer edible portion unspecified drained boiled prepared separable trimmed grade choice composite retail cut 0 8 ns fortified vitamin d milkfat added bleached pasteurized quick long grain'.split(
    ' ',
  ),
);
/** Words that make a food a special form, seldom meant unless said. */
const SPECIAL = new Set(
  'canned frozen dried dehydrated powder powdered pickled imitation substitute industrial condensed concentrate instant mix fried breaded smoked cured sweetened flavored stuffed creamed juice baby infant toddler strained junior leaf sprouted immature offal giblet rendered unenriched reduced low'.split(
    ' ',
  ),
);
const MANUFACTURED =
  /^(formulated|school lunch|usda commodity|gravy|toddler formula)\b|\b(imitation|substitutes?|industrial|commodity)\b/i;

/** Behind by: sums of these. */
const BEHIND = { otherSection: 0.35, brand: 0.3, manufactured: 0.15, own: -0.25 } as const;

/** Prepares a food and the other names that the synonyms give it. */
export function searchDocument(entry: SearchEntry, synonyms: PreparedSynonyms): SearchDocument {
  const own = nameWords(entry.name);
  const totalWeight = own.reduce((sum, word) => sum + word.weight, 0);
  const behind = entry.own
    ? BEHIND.own
    : (entry.section === 'other' ? BEHIND.otherSection : 0) +
      (entry.product || namesBrand(entry.name) ? BEHIND.brand : 0) +
      (MANUFACTURED.test(entry.name) ? BEHIND.manufactured : 0);
  return {
    entry,
    words: [...own, ...aliasWords(entry, own, synonyms)],
    totalWeight,
    prior: behind,
    isRaw: own.some(({ stem }) => stem === 'raw'),
  };
}

/** The words of a name, by its parts between commas; what stands in brackets weighs less. */
function nameWords(name: string): DocumentWord[] {
  const found: DocumentWord[] = [];
  const seen = new Set<string>();
  const unsalted = /\bwithout (?:added )?salt\b/i.test(name);
  let depth = 0;
  let segment = 0;
  for (const part of name.split(/(?<=[(),])|(?=[(),])/)) {
    if (part === '(') depth += 1;
    else if (part === ')') depth = Math.max(0, depth - 1);
    else if (part === ',') segment += depth === 0 ? 1 : 0;
    else {
      for (const word of words(part)) {
        if (seen.has(word.stem)) continue;
        seen.add(word.stem);
        const weight = weightOf(word.stem, unsalted) * (depth > 0 ? 0.3 : 1);
        found.push({ ...word, segment, weight });
      }
    }
  }
  return found;
}

function weightOf(stem: string, unsalted: boolean): number {
  if (stem === 'without' || (unsalted && stem === 'salt')) return 0.1;
  if (PLAIN.has(stem)) return 0.15;
  return SPECIAL.has(stem) ? 1.6 : 1;
}

/** Synonyms with their words cut once, found by the food's number or by the first word that they mean. */
export interface PreparedSynonyms {
  readonly all: readonly PreparedSynonym[];
  readonly byStem: ReadonlyMap<string, readonly PreparedSynonym[]>;
  readonly bySourceNo: ReadonlyMap<string, readonly PreparedSynonym[]>;
}

interface PreparedSynonym {
  readonly names: readonly (readonly Word[])[];
  readonly means: readonly string[];
  readonly sections: readonly Section[] | null;
  readonly foods: readonly string[];
}

/** Cuts synonyms into words, once for all foods. */
export function prepareSynonyms(synonyms: readonly SearchSynonym[]): PreparedSynonyms {
  const byStem = new Map<string, PreparedSynonym[]>();
  const bySourceNo = new Map<string, PreparedSynonym[]>();
  const all = synonyms.map((synonym) => {
    const prepared: PreparedSynonym = {
      names: synonym.words.map((name) => words(name)),
      means: words(synonym.means ?? '').map(({ stem }) => stem),
      sections: synonym.sections ?? null,
      foods: synonym.foods ?? [],
    };
    const [first] = prepared.means;
    if (first !== undefined) byStem.set(first, [...(byStem.get(first) ?? []), prepared]);
    for (const sourceNo of prepared.foods) {
      bySourceNo.set(sourceNo, [...(bySourceNo.get(sourceNo) ?? []), prepared]);
    }
    return prepared;
  });
  return { all, byStem, bySourceNo };
}

/** The words of other names that the food's own name lacks, standing where the words they replace stand. */
function aliasWords(
  entry: SearchEntry,
  own: readonly DocumentWord[],
  synonyms: PreparedSynonyms,
): DocumentWord[] {
  const byStem = new Map(own.map((word) => [word.stem, word]));
  const added = new Map<string, DocumentWord>();
  const add = ({ names }: PreparedSynonym, replaced: readonly DocumentWord[]) => {
    for (const name of names) {
      const kept = new Set(name.map(({ stem }) => stem));
      const gone = replaced.filter(({ stem }) => !kept.has(stem));
      const missing = name.filter(({ stem }) => !byStem.has(stem));
      const stands = gone.length > 0 ? gone : own.slice(0, 1);
      const segment = Math.min(...stands.map((word) => word.segment));
      const weight = gone.reduce((sum, word) => sum + word.weight, 0) / Math.max(1, missing.length);
      const replaces = gone.map(({ stem }) => stem);
      const alias = [...kept];
      for (const word of missing) {
        if (!added.has(word.stem))
          added.set(word.stem, { ...word, segment, weight, alias, replaces });
      }
    }
  };
  for (const { stem } of own) {
    for (const synonym of synonyms.byStem.get(stem) ?? []) {
      if (synonym.sections && !synonym.sections.includes(entry.section)) continue;
      const replaced = synonym.means.flatMap((each) => byStem.get(each) ?? []);
      if (replaced.length === synonym.means.length) add(synonym, replaced);
    }
  }
  for (const synonym of synonyms.bySourceNo.get(entry.sourceNo) ?? []) add(synonym, []);
  return [...added.values()];
}
