import {
  prepareSynonyms,
  searchDocument,
  type SearchDocument,
  type SearchEntry,
} from '#lib/foods/search-document';
import { EXACT_NAME, saysState, score, wordValue } from '#lib/foods/search-score';
import type { SearchSynonym } from '#lib/foods/search-synonyms';
import { words, type Word } from '#lib/foods/search-text';
import { buildWordTrie, matchingWords, type WordTrie } from '#lib/foods/word-trie';

/** Where a word stands: food by food. */
interface Postings {
  readonly documents: Uint32Array;
  readonly segments: Uint8Array;
  readonly weights: Float64Array;
}

/** Foods prepared for searching. Built once; searching does not change it. */
export interface SearchIndex {
  readonly documents: readonly SearchDocument[];
  /** Every singular and the number of its postings. */
  readonly stems: ReadonlyMap<string, number>;
  readonly postings: readonly Postings[];
  readonly trie: WordTrie;
  /** Documents that a synonym names for a whole query, by `queryKey`. */
  readonly exactNames: ReadonlyMap<string, ReadonlySet<number>>;
  /** Documents by the number of their source. */
  readonly bySourceNo: ReadonlyMap<string, number>;
}

export interface SearchHit {
  readonly entry: SearchEntry;
  /** The food as the search knows it. */
  readonly document: SearchDocument;
  /** Higher is better; comparable within one query. */
  readonly score: number;
}

/** Longer queries are cut: nobody types more words, and pasted text must not stall. */
const MOST_WORDS = 12;
const MOST_LETTERS = 200;

/** Below this many foods that match every word, typos are looked for too. */
export const FEW = 3;

/**
 * Prepares foods and synonyms for `searchFoods`. Give the foods in order of number: ties keep that order.
 * About half a second for the 8,789 foods of SR28.
 */
export function buildSearchIndex(
  entries: readonly SearchEntry[],
  synonyms: readonly SearchSynonym[],
): SearchIndex {
  const prepared = prepareSynonyms(synonyms);
  const documents = entries.map((entry) => searchDocument(entry, prepared));
  const stems = new Map<string, number>();
  const forms = new Map<string, number>();
  const lists: { documents: number[]; segments: number[]; weights: number[] }[] = [];
  documents.forEach((document, number) => {
    for (const { stem, written, segment, weight } of document.words) {
      const word = stems.get(stem) ?? lists.length;
      const list = lists[word] ?? { documents: [], segments: [], weights: [] };
      if (word === lists.length) {
        stems.set(stem, word);
        lists.push(list);
      }
      forms.set(`${stem} ${stem}`, word);
      forms.set(`${written} ${stem}`, word);
      list.documents.push(number);
      list.segments.push(segment);
      list.weights.push(weight);
    }
  });
  const bySourceNo = new Map(entries.map(({ sourceNo }, number) => [sourceNo, number]));
  const exactNames = new Map<string, Set<number>>();
  for (const { names, foods } of prepared.all) {
    for (const name of names) {
      const key = queryKey(name);
      const named = exactNames.get(key) ?? new Set<number>();
      for (const sourceNo of foods) {
        const number = bySourceNo.get(sourceNo);
        if (number !== undefined) named.add(number);
      }
      if (named.size > 0) exactNames.set(key, named);
    }
  }
  return {
    documents,
    stems,
    postings: lists.map((list) => ({
      documents: Uint32Array.from(list.documents),
      segments: Uint8Array.from(list.segments),
      weights: Float64Array.from(list.weights),
    })),
    trie: buildWordTrie([...forms].map(([key, word]) => [key.slice(0, key.indexOf(' ')), word])),
    exactNames,
    bySourceNo,
  };
}

/** The numbers of the foods that a synonym names for all words of a query, by its `queryKey`. */
export function namedNumbers(index: SearchIndex, key: string): ReadonlySet<string> {
  const named = index.exactNames.get(key) ?? [];
  return new Set([...named].flatMap((number) => index.documents[number]?.entry.sourceNo ?? []));
}

/** The words of a query, each once, not more than are ever typed. */
export function queryWords(query: string): Word[] {
  const seen = new Set<string>();
  const fresh = words(query.slice(0, MOST_LETTERS)).filter(
    ({ stem }) => !seen.has(stem) && seen.add(stem),
  );
  return fresh.slice(0, MOST_WORDS);
}

/** The words of a query without regard to order and number. */
export function queryKey(query: readonly Word[]): string {
  return [...new Set(query.map(({ stem }) => stem))].sort().join(' ');
}

/**
 * The foods that best match what was typed so far, best first, at most `take`; ties in order of the index.
 * Words may come in any order and number; the last may be unfinished; one or two words may be wrong; where
 * few foods match every word, typos are allowed (1 from 4 letters, 2 from 8, a swap is one).
 * Plain kitchen foods come before brands, restaurants, infant and manufactured foods, raw before prepared
 * where the query does not say. The number of a food gives that food. `whole`: the last word is finished too.
 */
export function searchFoods(
  index: SearchIndex,
  query: string,
  { take, whole = false }: { readonly take: number; readonly whole?: boolean },
): SearchHit[] {
  const typed = queryWords(query);
  const numbered = index.documents[index.bySourceNo.get(query.trim()) ?? -1];
  if (numbered) return [{ entry: numbered.entry, document: numbered, score: 1 }].slice(0, take);
  if (typed.length === 0 || take < 1) return [];
  const readings = queryReadings(typed, (stem) => index.stems.has(stem));
  const scores = new Float64Array(index.documents.length).fill(-Infinity);
  const typing = (typos: boolean): Typing => ({ typos, whole });
  let complete = 0;
  for (const reading of readings) complete += scoreReading(index, reading, typing(false), scores);
  if (complete < FEW) {
    for (const reading of readings) scoreReading(index, reading, typing(true), scores);
  }
  for (const number of index.exactNames.get(queryKey(typed)) ?? []) {
    scores[number] = (scores[number] ?? -Infinity) + EXACT_NAME;
  }
  return bestHits(index.documents, scores, take);
}

/**
 * The ways to read a query: as typed; neighbours joined where that makes a known word ("butter milk");
 * an unknown word parted where both halves are known ("sweetpotato").
 */
export function queryReadings(
  typed: readonly Word[],
  isKnown: (stem: string) => boolean,
): (readonly Word[])[] {
  const readings: (readonly Word[])[] = [typed];
  for (let at = 0; at + 1 < typed.length; at += 1) {
    const joined = words(`${typed[at]?.written ?? ''}${typed[at + 1]?.written ?? ''}`);
    if (joined[0] && isKnown(joined[0].stem)) {
      readings.push([...typed.slice(0, at), ...joined, ...typed.slice(at + 2)]);
    }
  }
  typed.forEach((word, at) => {
    if (isKnown(word.stem) || isKnown(word.written)) return;
    for (let cut = 3; cut <= word.written.length - 3; cut += 1) {
      const halves = words(`${word.written.slice(0, cut)} ${word.written.slice(cut)}`);
      if (halves.length === 2 && halves.every(({ stem }) => isKnown(stem))) {
        readings.push([...typed.slice(0, at), ...halves, ...typed.slice(at + 1)]);
        return;
      }
    }
  });
  return readings;
}

/** How far a typed word may be from the one that it means. */
interface Typing {
  readonly typos: boolean;
  readonly whole: boolean;
}

/** Raises the scores of what one reading finds; returns how many foods match all its words. */
function scoreReading(
  index: SearchIndex,
  reading: readonly Word[],
  { typos, whole }: Typing,
  scores: Float64Array,
): number {
  const size = index.documents.length;
  const matched = new Uint8Array(size);
  const value = new Float64Array(size);
  const weight = new Float64Array(size);
  const touched: number[] = [];
  // The best match of the word at hand, per document.
  const bestValue = new Float64Array(size);
  const bestWeight = new Float64Array(size);

  reading.forEach((word, at) => {
    const hits: number[] = [];
    const isLast = !whole && at === reading.length - 1;
    for (const [number, quality] of wordMatches(index, word, isLast, typos)) {
      const postings = index.postings[number];
      if (!postings) continue;
      for (let each = 0; each < postings.documents.length; each += 1) {
        const document = postings.documents[each] ?? 0;
        const segment = postings.segments[each] ?? 0;
        const found = wordValue(quality, segment);
        const before = bestValue[document] ?? 0;
        if (before === 0) hits.push(document);
        const stands = postings.weights[each] ?? 0;
        if (found > before || (found === before && stands > (bestWeight[document] ?? 0))) {
          bestValue[document] = found;
          bestWeight[document] = stands;
        }
      }
    }
    for (const document of hits) {
      if (matched[document] === 0) touched.push(document);
      matched[document] = (matched[document] ?? 0) + 1;
      value[document] = (value[document] ?? 0) + (bestValue[document] ?? 0);
      weight[document] = (weight[document] ?? 0) + (bestWeight[document] ?? 0);
      bestValue[document] = 0;
    }
  });

  const stateSaid = saysState(reading.map(({ stem }) => stem));
  let complete = 0;
  for (const number of touched) {
    const document = index.documents[number];
    if (!document) continue;
    const found = {
      matched: matched[number] ?? 0,
      value: value[number] ?? 0,
      weight: weight[number] ?? 0,
    };
    if (found.matched === reading.length) complete += 1;
    const total = score(document, found, reading.length, stateSaid);
    if (total !== null && total > (scores[number] ?? -Infinity)) scores[number] = total;
  }
  return complete;
}

/** The known words that a typed word matches: as written, or its singular exactly. */
function wordMatches(
  index: SearchIndex,
  { written, stem }: Word,
  isLast: boolean,
  typos: boolean,
): Map<number, number> {
  const found = matchingWords(index.trie, written, isLast, typos);
  const same = index.stems.get(stem);
  if (same !== undefined) found.set(same, 1);
  return found;
}

function bestHits(
  documents: readonly SearchDocument[],
  scores: Float64Array,
  take: number,
): SearchHit[] {
  const best: SearchHit[] = [];
  scores.forEach((total, number) => {
    if (total === -Infinity) return;
    const worst = best[take - 1];
    if (worst && total <= worst.score) return;
    const document = documents[number];
    if (!document) return;
    const at = best.findIndex((hit) => total > hit.score);
    const hit = { entry: document.entry, document, score: total };
    best.splice(at < 0 ? best.length : at, 0, hit);
    if (best.length > take) best.pop();
  });
  return best;
}
