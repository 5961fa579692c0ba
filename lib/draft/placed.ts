import { cleanTitle } from './clean-title';
import type { DescribedDish } from './described';
import type { DraftSegment, From, LeftOut, Said } from './draft';
import { titlesShare, titleStems } from './same-title';

/** What a dish is called that nothing names. */
export const UNNAMED = 'A dish without a name';

/** A segment with the stretch of what is said that is its own; null where nobody knows it. */
export interface Placed extends DraftSegment {
  /** Only a chapter names it, and in no words of a dish: it is one where its lines are said. */
  readonly isDoubtful: boolean;
  readonly said: { readonly start: number; readonly end: number } | null;
}

/** A segment of which nothing is known. */
export const EMPTY = {
  lines: [],
  portions: null,
  method: [],
  inMs: null,
  outMs: null,
  said: null,
  isDoubtful: false,
} as const;

/** Segments in their order, and lines that became none. */
export interface Segments {
  readonly segments: readonly Placed[];
  readonly left: readonly LeftOut[];
}

/** An end that is after its beginning; else null. */
export const after = (startMs: number, endMs: number | null) =>
  endMs !== null && endMs > startMs ? endMs : null;

/** Whether a dish whose heading is that of a part is called as the episode is, which does not name that part. */
export function isNamedByEpisode(
  { isPart, title: own }: DescribedDish,
  title: Said | null,
): boolean {
  if (!isPart || title === null) return false;
  return own === null || titlesShare(titleStems(own.text), titleStems(title.text)) < 1;
}

/** A dish of the description that no chapter places. */
export function unplaced(dish: DescribedDish, title: Said | null, alone = false): Placed {
  const from = dish.title?.from ?? dish.lines[0]?.from ?? dish.method[0]?.from ?? NOWHERE;
  return {
    ...EMPTY,
    ...dish,
    kind: 'recipe',
    title:
      (isNamedByEpisode(dish, title) && alone ? nameOf(title) : null) ??
      dish.title?.text ??
      nameOf(title) ??
      UNNAMED,
    from,
  };
}

/** What the only dish of an episode is called by the episode's title: the words before a bar, a bracket or a dash. */
export function nameOf(title: Said | null): string | null {
  if (title === null) return null;
  const [name = ''] = title.text.split(/\s[|–—-]\s|[|(\[]/);
  return /\p{L}{3}/u.test(name) ? cleanTitle(name) : title.text;
}

const NOWHERE: From = { text: 'title', line: 1, startMs: null, words: '' };
