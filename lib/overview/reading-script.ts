import type { ReadingItem } from '#lib/cut/reading-pace';
import { wordsIn } from '#lib/cut/speaking-rate';
import type { EpisodeFile, Segment } from '#lib/episode/schema';
import { bindText } from '#lib/figures/bind-text';
import type { EpisodeFigures } from '#lib/figures/episode-figures';
import type { NumberScope, PublishedNumbers } from '#lib/figures/published-numbers';
import type { Nutrient } from '#lib/foods/nutrients';

/** A stretch of a sentence to say: words, or a number; `open` where there is none. */
export interface ScriptPart {
  readonly text: string;
  readonly open: boolean;
}

/** What stands on “Read to camera”, in the order of reading. */
export type ScriptItem = ReadingItem & {
  readonly key: string;
  /** The segment's title, where this is the first of it. */
  readonly heading: string | null;
} & (
    | { readonly kind: 'point'; readonly parts: readonly ScriptPart[] }
    | { readonly kind: 'stop'; readonly title: string; readonly framing: string }
  );

/** A number that is not there when it is to be said, and the way to its cause. */
export interface ScriptGap {
  readonly words: string;
  readonly segmentId: string;
  readonly of: { readonly nutrient: Nutrient; readonly scope: NumberScope } | null;
}

export interface ReadingScript {
  readonly items: readonly ScriptItem[];
  readonly gaps: readonly ScriptGap[];
}

/** An episode with the numbers that are said. */
interface Spoken {
  readonly file: EpisodeFile;
  readonly figures: EpisodeFigures;
  readonly numbers: PublishedNumbers;
}

/**
 * The talking points of an episode in running order, with their numbers filled in, and its shots as stops between them.
 * Nothing says which sentence is of which shot: of each segment the first shot stands before the first sentence, the
 * second before the second, and so on. A number that is open stays visible as such and is told.
 */
export function readingScript({ file, figures, numbers }: Spoken): ReadingScript {
  const gaps: ScriptGap[] = [];
  const items = file.episode.segments.flatMap((segment) => {
    const points = segment.talkingPoints.map(({ id, text }) => {
      const bound = bindText(text, segment, figures, numbers);
      const open = bound.parts.filter(({ text: part }) => isOpen(part));
      bound.gaps.forEach((words, at) => {
        gaps.push({ words, segmentId: segment.id, of: open[at]?.of ?? null });
      });
      const parts = bound.parts.map((part) => ({ text: part.text, open: isOpen(part.text) }));
      return { key: id, kind: 'point' as const, words: wordsIn(bound.text), parts };
    });
    return headed(segment, interleaved(stopsOf(segment), points));
  });
  return { items, gaps };
}

/** What could not be filled in stays in brackets. */
const isOpen = (text: string): boolean => /^\[[^[\]]*\]$/.test(text);

const stopsOf = ({ shots }: Segment) =>
  shots.map(({ id, title, framing }) => ({ key: id, kind: 'stop' as const, title, framing }));

function interleaved<S, P>(stops: readonly S[], points: readonly P[]): (S | P)[] {
  const rows = Array.from({ length: Math.max(stops.length, points.length) }, (_, at) => at);
  return rows.flatMap((at) => [...stops.slice(at, at + 1), ...points.slice(at, at + 1)]);
}

type Bare = ScriptItem extends infer Item ? Omit<Extract<Item, ScriptItem>, 'heading'> : never;

function headed({ title }: Segment, items: readonly Bare[]): ScriptItem[] {
  return items.map((item, at) => ({ ...item, heading: at === 0 ? title : null }) as ScriptItem);
}
