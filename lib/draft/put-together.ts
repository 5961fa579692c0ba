import { byChapters } from './by-chapters';
import { byDishes } from './by-dishes';
import { cleanTitle } from './clean-title';
import { fromLine, leftOut, type Described } from './described';
import type { Draft, LeftOut, Said } from './draft';
import type { SpokenText } from './spoken';
import { withAmounts } from './with-amounts';

const MOST_SEGMENTS = 100;

/**
 * The episode that a description and what is said come to. Segments are the chapters where a description has them,
 * else its dishes in their order, else dishes that the talk turns to by name, else one dish with the title's name.
 */
export function putTogether(
  described: Described,
  spoken: SpokenText | null,
  title: Said | null,
): Draft {
  const chaptered = described.chapters.length >= 2;
  const placed = chaptered
    ? byChapters(described, spoken, title)
    : byDishes(described, spoken, title);
  const left: LeftOut[] = [...described.left, ...placed.left];
  if (!chaptered) {
    for (const { line, words } of described.chapters)
      left.push(leftOut('prose', fromLine(line, words)));
  }
  const whole = placed.segments.slice(0, MOST_SEGMENTS);
  for (const { from } of placed.segments.slice(MOST_SEGMENTS)) left.push(leftOut('full', from));
  const segments = spoken ? withAmounts(whole, spoken, left) : whole;
  for (const { line, message, skipped } of (spoken?.remarks ?? []).slice(0, 200)) {
    if (skipped)
      left.push(leftOut('captions', { text: 'captions', line, startMs: null, words: '' }, message));
  }
  const { hook, links, disclosure } = described;
  return {
    title,
    hook,
    segments: segments.map(({ said: _said, isDoubtful: _doubt, ...segment }) => segment),
    links,
    disclosure,
    left: left.sort((a, b) => ORDER[a.from.text] - ORDER[b.from.text] || a.from.line - b.from.line),
  };
}

const ORDER = { title: 0, description: 1, captions: 2, recipeData: 3 } as const;

/** The title of an episode from its first line with words. */
export function titleSaid(text: string): Said | null {
  const lines = text.split(/\r\n|\n|\r/);
  const at = lines.findIndex((line) => cleanTitle(line) !== '');
  const words = lines[at] ?? '';
  if (at < 0) return null;
  const shown = words.trim().slice(0, 300);
  return {
    text: cleanTitle(words),
    from: { text: 'title', line: at + 1, startMs: null, words: shown },
  };
}
