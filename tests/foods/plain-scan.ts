import { matchWord } from '#lib/foods/match-word';
import type { SearchDocument } from '#lib/foods/search-document';
import {
  FEW,
  queryKey,
  queryReadings,
  queryWords,
  type SearchHit,
  type SearchIndex,
} from '#lib/foods/search-index';
import { EXACT_NAME, saysState, score, wordValue } from '#lib/foods/search-score';
import type { Word } from '#lib/foods/search-text';

/** What a scan needs beforehand: the foods, and every form of every word. */
export interface Scan {
  readonly index: SearchIndex;
  readonly forms: ReadonlyMap<string, readonly string[]>;
}

export function prepareScan(index: SearchIndex): Scan {
  const forms = new Map<string, Set<string>>();
  for (const { words } of index.documents) {
    for (const { stem, written } of words) {
      const known = forms.get(stem) ?? new Set([stem]);
      forms.set(stem, known.add(written));
    }
  }
  return { index, forms: new Map([...forms].map(([stem, set]) => [stem, [...set]])) };
}

/**
 * The same search without an index: every word of the query is held against every word of every food, by the
 * definitions of `matchWord` and `score`. What `searchFoods` must equal, and what it is timed against.
 */
export function scanFoods({ index, forms }: Scan, query: string, take: number): SearchHit[] {
  const typed = queryWords(query);
  if (typed.length === 0) return [];
  const readings = queryReadings(typed, (stem) => index.stems.has(stem));
  const scan = (typos: boolean) => {
    let complete = 0;
    const scores = index.documents.map((document) => {
      let best: number | null = null;
      for (const reading of readings) {
        const found = lookAt(document, reading, typos, forms);
        if (found.matched === reading.length) complete += 1;
        const stateSaid = saysState(reading.map(({ stem }) => stem));
        const total = score(document, found, reading.length, stateSaid);
        if (total !== null && (best === null || total > best)) best = total;
      }
      return best;
    });
    return { complete, scores };
  };
  const strict = scan(false);
  const loose = strict.complete < FEW ? scan(true) : null;
  const exact = index.exactNames.get(queryKey(typed));
  const hits: SearchHit[] = [];
  index.documents.forEach((document, number) => {
    const totals = [strict.scores[number] ?? null, loose?.scores[number] ?? null];
    const best = Math.max(...totals.map((total) => total ?? -Infinity));
    if (best === -Infinity) return;
    const total = best + (exact?.has(number) ? EXACT_NAME : 0);
    hits.push({ entry: document.entry, document, score: total });
  });
  return hits.sort((a, b) => b.score - a.score).slice(0, take);
}

function lookAt(
  document: SearchDocument,
  reading: readonly Word[],
  typos: boolean,
  forms: ReadonlyMap<string, readonly string[]>,
) {
  let matched = 0;
  let value = 0;
  let weight = 0;
  reading.forEach((asked, at) => {
    const isLast = at === reading.length - 1;
    let best = { value: 0, weight: 0 };
    for (const word of document.words) {
      let quality = word.stem === asked.stem ? 1 : 0;
      for (const form of forms.get(word.stem) ?? []) {
        quality = Math.max(quality, matchWord(asked.written, form, isLast, typos));
      }
      const found = quality === 0 ? 0 : wordValue(quality, word.segment);
      const better = found > best.value || (found === best.value && word.weight > best.weight);
      if (found > 0 && better) best = { weight: word.weight, value: found };
    }
    if (best.value === 0) return;
    matched += 1;
    value += best.value;
    weight += best.weight;
  });
  return { matched, value, weight };
}
