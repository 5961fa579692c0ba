import type { EditFacts } from '#lib/claims/edit-facts';
import { readEdit, type EditReading } from '#lib/claims/read-edit';
import { USUAL_WORDS_PER_MINUTE } from '#lib/cut/speaking-rate';
import type { EpisodeFile } from '#lib/episode/schema';
import { contradictionRows, type ContradictionRow } from '#lib/overview/contradiction-rows';
import { lacksPrice } from '#lib/overview/lacks-price';
import { namedRows, type NamedRow } from '#lib/overview/named-rows';
import { asideRow, saidRow, type SaidRow, type Standing } from '#lib/overview/said-rows';
import { stripParts, type StripPart } from '#lib/overview/strip-parts';
import { printRuntime } from '#lib/units/print';

export interface Counts extends Readonly<Record<Standing, number>> {
  readonly all: number;
}

/** A statement, and whether a price in the pantry would decide it: one was said, and none is known for it. */
export interface EditRow extends SaidRow {
  readonly lacksPrice: boolean;
}

/** How an episode's edit stands: all that is said in it, with what the breakdown says of each. */
export interface EditStanding {
  readonly texts: EditReading['texts'];
  /** Text by text, in the order of time. */
  readonly rows: readonly EditRow[];
  readonly counts: Counts;
  readonly contradictions: readonly ContradictionRow[];
  readonly named: readonly NamedRow[];
  readonly parts: readonly StripPart[];
  /** Where the edit ends as far as its texts and segments tell, in milliseconds and as read; never 0. */
  readonly endMs: number;
  readonly end: string;
  /** Whether words are among the statements that are judged by rules for claims. */
  readonly hasClaims: boolean;
  /** Whether something is said to be free of an allergen, or fit for a diet. */
  readonly hasFreeFrom: boolean;
}

/**
 * Everything a page of the edit shows, in the words of the screen.
 * @example editStanding(file, facts).counts.off // 3
 */
export function editStanding(file: EpisodeFile, facts: EditFacts): EditStanding {
  const read = readEdit(file, facts);
  const rows = rowsOf(file, read, facts);
  const endMs = endOf(file, read);
  return {
    texts: read.texts,
    rows,
    counts: countsOf(rows),
    contradictions: contradictionRows(read.contradictions),
    named: namedRows(read.named, file),
    parts: stripParts(file.episode, endMs),
    endMs,
    end: printRuntime(Math.floor(endMs / 1000)),
    hasClaims: read.judged.some(({ statement }) => statement.kind === 'claimWord'),
    hasFreeFrom: read.judged.some(({ statement }) => statement.kind === 'freeFrom'),
  };
}

function rowsOf(file: EpisodeFile, read: EditReading, facts: EditFacts): EditRow[] {
  const texts = new Map(read.texts.map(({ said, text }) => [said.id, text]));
  const of = { file, texts, perMinute: file.creator.wordsPerMinute ?? USUAL_WORDS_PER_MINUTE };
  const order = new Map(read.texts.map(({ said }, at) => [said.id, at]));
  const textOf = ({ textId }: EditRow) => order.get(textId) ?? 0;
  return [
    ...read.judged.map((judged) => ({
      ...saidRow(judged, of),
      lacksPrice: judged.verdict === 'unknown' && lacksPrice(judged, facts),
    })),
    ...read.putAside.map((aside) => ({ ...asideRow(aside, of), lacksPrice: false })),
  ].sort(
    (a, b) => textOf(a) - textOf(b) || (a.startMs ?? 0) - (b.startMs ?? 0) || a.start - b.start,
  );
}

function countsOf(rows: readonly EditRow[]): Counts {
  const counts = { all: rows.length, agrees: 0, edge: 0, off: 0, unknown: 0, aside: 0 };
  for (const { standing } of rows) counts[standing] += 1;
  return counts;
}

function endOf({ episode }: EpisodeFile, { texts }: EditReading): number {
  const { num, den } = episode.rate;
  let end = 1000;
  for (const { outFrame } of episode.segments) {
    if (outFrame !== null) end = Math.max(end, (outFrame * 1000 * den) / num);
  }
  for (const { lines } of texts) {
    for (const { startMs, endMs } of lines) end = Math.max(end, endMs ?? startMs ?? 0);
  }
  return end;
}
