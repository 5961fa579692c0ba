import { lastAt } from '#lib/cut/last-at';
import type { SaidText, StatementPlace } from '#lib/claims/judged';
import type { TextContext } from '#lib/claims/statement';
import type { CaptionRemark } from '#lib/cut/captions';

/** A text of the episode as one stretch of words, with what each place in it is about and where it came from. */
export interface PlacedText {
  readonly said: SaidText;
  readonly form: TextContext['form'];
  /** All its lines; offsets of statements count in it, in UTF-16 units. */
  readonly text: string;
  /** Where each line begins, in the order of the text. */
  readonly lines: readonly PlacedLine[];
  /** The text cut where the dish changes; together they are all of it. */
  readonly stretches: readonly Stretch[];
  /** What could not be read, by line. */
  readonly remarks: readonly CaptionRemark[];
}

/** A line of what was pasted. */
export interface PlacedLine {
  readonly start: number;
  /** Counted from 1. */
  readonly line: number;
  readonly startMs: number | null;
  readonly endMs: number | null;
}

/**
 * What a stretch is about: the dish in force; the whole day, as a title of several dishes is; or nobody knows.
 */
export type Topic =
  | { readonly kind: 'dish'; readonly segmentId: string }
  | { readonly kind: 'day' }
  | { readonly kind: 'unknown' };

/** A part of a text with one dish in force. */
export interface Stretch {
  readonly start: number;
  /** Behind its last unit. */
  readonly end: number;
  readonly topic: Topic;
}

export const UNKNOWN_TOPIC: Topic = { kind: 'unknown' };

/** Whether two stretches are about the same. */
function sameTopic(a: Topic, b: Topic): boolean {
  return a.kind === 'dish' && b.kind === 'dish' ? a.segmentId === b.segmentId : a.kind === b.kind;
}

/** One stretch for each topic of a row of places, in order; what follows about the same is joined. */
export function stretchesOf(
  length: number,
  changes: readonly { readonly at: number; readonly topic: Topic }[],
): Stretch[] {
  const found: { start: number; end: number; topic: Topic }[] = [];
  for (const { at, topic } of changes) {
    const last = found.at(-1);
    if (last && sameTopic(last.topic, topic)) continue;
    if (last?.start === at) found.pop();
    else if (last) last.end = at;
    const before = found.at(-1);
    if (before && sameTopic(before.topic, topic)) continue;
    found.push({ start: before ? at : 0, end: length, topic });
  }
  const last = found.at(-1);
  if (last) last.end = length;
  return found.length > 0 ? found : [{ start: 0, end: length, topic: UNKNOWN_TOPIC }];
}

/**
 * Where a stretch of a text stands: its line, and in the edit from the beginning of its first line to the end of its
 * last.
 * @example placeOf(captions, 40, 52) // { line: 3, startMs: 1000, endMs: 4000, … }
 */
export function placeOf(
  { said, lines, stretches }: PlacedText,
  start: number,
  end: number,
): StatementPlace {
  const first = lastAt(lines, start) ?? lines[0];
  const last = lastAt(lines, Math.max(start, end - 1)) ?? lines[0];
  const topic = (lastAt(stretches, start) ?? stretches[0])?.topic ?? UNKNOWN_TOPIC;
  return {
    textId: said.id,
    kind: said.kind,
    line: first?.line ?? 1,
    startMs: first?.startMs ?? null,
    endMs: last?.endMs ?? null,
    segmentId: topic.kind === 'dish' ? topic.segmentId : null,
  };
}
