import type { SpokenLine } from '#lib/cut/spoken';
import { plainWords } from '#lib/cut/plain-words';

/** What is known of a segment before the edit. */
export interface SoughtSegment {
  readonly id: string;
  readonly title: string;
  /** Its talking points, as they are to be said. */
  readonly points: readonly string[];
}

/** Where a segment may begin in the edit; offered to the person, never taken by itself. */
export interface FoundSegment {
  readonly id: string;
  readonly startMs: number;
  /** Where it stands in what was pasted, counted from 1. */
  readonly line: number;
  /** The words there that are its own, as they were said. */
  readonly words: readonly string[];
}

interface Place {
  readonly startMs: number;
  readonly line: number;
  readonly words: readonly string[];
  readonly score: number;
}

/** How long after its first word a segment still counts as beginning, in milliseconds (common practice, no source). */
export const OPENING_MS = 12_000;
/** A word of the title counts as much as this many of a talking point. */
const TITLE_WEIGHT = 3;
/** The share of a title's or of a point's own words below which nothing was found. */
const LEAST_SHARE = 0.4;

/**
 * Where in the captions each segment begins, by the words of its title and of its talking points: the places that fit
 * best and come in the running order. A word counts by how few lines have it. A segment that is not found is left out.
 *
 * @param segments in running order
 * @param lines what was said; lines without a time are passed over
 * @returns in running order, with rising times
 * @example findSegments([{ id: 's1', title: 'Skyr pots', points: [] }], lines)[0]?.startMs // 386200
 */
export function findSegments(
  segments: readonly SoughtSegment[],
  lines: readonly SpokenLine[],
): FoundSegment[] {
  const timed = lines.flatMap(({ startMs, line, text }) =>
    startMs === null ? [] : [{ startMs, line, words: plainWords(text) }],
  );
  const weight = weights(timed.map(({ words }) => words));
  const places = segments.map((segment) => placesOf(segment, timed, weight));
  return inOrder(segments, places);
}

/** A word weighs one over the lines that have it. */
function weights(lines: readonly (readonly string[])[]): (word: string) => number {
  const lineCount = new Map<string, number>();
  for (const words of lines) {
    for (const word of new Set(words)) lineCount.set(word, (lineCount.get(word) ?? 0) + 1);
  }
  return (word) => 1 / (lineCount.get(word) ?? 1);
}

/** Most places that are kept of one segment: the best ones. */
const MOST_PLACES = 40;

function placesOf(
  { title, points }: SoughtSegment,
  lines: readonly { startMs: number; line: number; words: readonly string[] }[],
  weight: (word: string) => number,
): Place[] {
  const parts = [
    { words: new Set(plainWords(title)), times: TITLE_WEIGHT },
    ...points.map((point) => ({ words: new Set(plainWords(point)), times: 1 })),
  ].filter(({ words }) => words.size > 0);
  const titleWords = new Set(plainWords(title));
  const own = new Set(parts.flatMap(({ words }) => [...words]));
  const places: Place[] = [];
  for (const [index, { startMs, line, words: first }] of lines.entries()) {
    // It begins where one of its own words is said, not a line before.
    if (!first.some((word) => own.has(word))) continue;
    const said = new Set<string>();
    for (let next = index; next < lines.length; next += 1) {
      const at = lines[next];
      if (!at || at.startMs - startMs > OPENING_MS) break;
      for (const word of at.words) if (own.has(word)) said.add(word);
    }
    const score = parts.reduce((sum, { words, times }) => {
      const found = [...words].filter((word) => said.has(word));
      if (found.length < LEAST_SHARE * words.size) return sum;
      const weighed = found.reduce((total, word) => total + weight(word), 0);
      return sum + times * (weighed + found.length / words.size);
    }, 0);
    // Its name said at once is how it begins; what is told of it later is not.
    const named = first.filter((word) => titleWords.has(word)).length;
    const opening = (TITLE_WEIGHT * named) / Math.max(1, titleWords.size);
    if (score > 0) places.push({ startMs, line, words: [...said], score: score + opening });
  }
  return places.sort((a, b) => b.score - a.score || a.startMs - b.startMs).slice(0, MOST_PLACES);
}

/** The places, one of each segment at most, that rise in time and together fit best. */
function inOrder(
  segments: readonly SoughtSegment[],
  places: readonly (readonly Place[])[],
): FoundSegment[] {
  interface Chain {
    readonly score: number;
    readonly place: Place;
    readonly id: string;
    readonly before: Chain | null;
  }
  let chains: Chain[] = [];
  segments.forEach(({ id }, index) => {
    const longer = (places[index] ?? []).map((place): Chain => {
      const before = chains
        .filter((chain) => chain.place.startMs < place.startMs)
        .reduce<Chain | null>(
          (best, each) => (best && best.score >= each.score ? best : each),
          null,
        );
      return { score: place.score + (before?.score ?? 0), place, id, before };
    });
    chains = [...chains, ...longer];
  });
  let last = chains.reduce<Chain | null>(
    (best, each) => (best && best.score >= each.score ? best : each),
    null,
  );
  const found: FoundSegment[] = [];
  for (; last; last = last.before) {
    const { startMs, line, words } = last.place;
    found.unshift({ id: last.id, startMs, line, words });
  }
  return found;
}
