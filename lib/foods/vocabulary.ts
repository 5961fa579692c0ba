/** The words of an inverted index and under how many foods each is filed, for finishing words as they are typed. */
export interface Vocabulary {
  /** In the order of code units. */
  readonly words: readonly string[];
  readonly counts: ReadonlyMap<string, number>;
}

/** `buildVocabulary(new Map([['oat', 3]]))` → a vocabulary of one word. */
export function buildVocabulary(counts: ReadonlyMap<string, number>): Vocabulary {
  const words = [...counts.keys()].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  return { words, counts };
}

/**
 * The words that begin so, the most frequent first, at most `take`; the beginning itself first if it is a word.
 * `beginningWith(vocabulary, 'choc', 8)` → `['chocolate', 'chocolatey']`.
 */
export function beginningWith(
  { words, counts }: Vocabulary,
  beginning: string,
  take: number,
): readonly string[] {
  const best: string[] = [];
  const count = (word: string) => (word === beginning ? Infinity : (counts.get(word) ?? 0));
  for (let at = firstFrom(words, beginning); at < words.length; at += 1) {
    const word = words[at] ?? '';
    if (!word.startsWith(beginning)) break;
    if (best.length === take && count(word) <= count(best[take - 1] ?? '')) continue;
    const place = best.findIndex((other) => count(word) > count(other));
    best.splice(place < 0 ? best.length : place, 0, word);
    if (best.length > take) best.pop();
  }
  return best;
}

/** The place of the first word that is not before `from`. */
function firstFrom(words: readonly string[], from: string): number {
  let [low, high] = [0, words.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((words[middle] ?? '') < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
