import { chapterSlots } from './chapter-slots';
import { cleanTitle } from './clean-title';
import { fromLine, leftOut, type Described, type DescribedDish } from './described';
import type { LeftOut, Said } from './draft';
import { namesDish } from './names-dish';
import {
  after,
  EMPTY,
  isNamedByEpisode,
  nameOf,
  UNNAMED,
  unplaced,
  type Placed,
  type Segments,
} from './placed';
import { offsetAt, type SpokenText } from './spoken';
import { foldRow } from './text-rows';
import { withoutAsides } from './title-asides';
import { STAGE, TIME_OF_DAY } from './words';

/**
 * Segments by the chapters of a description, with its dishes where the chapters mean them. A chapter without a dish's
 * words and lines is talk; where nothing could say its lines, as without captions or lists, it is taken for a dish.
 */
export function byChapters(
  described: Described,
  spoken: SpokenText | null,
  title: Said | null,
): Segments {
  const { chapters, dishes } = described;
  const left: LeftOut[] = [];
  const listed = dishes.map((dish) => ({
    title: dish.title?.text ?? null,
    lines: dish.lines.map(({ text }) => text),
  }));
  const slots = chapterSlots(chapters, listed, spoken?.endMs ?? null);
  const segments = slots.map(({ of, chapter, endMs, within }): Placed => {
    const from = fromLine(chapter.line, chapter.words);
    const place = { from, inMs: chapter.startMs, outMs: after(chapter.startMs, endMs) };
    const range = spoken && rangeOf(spoken, chapter.startMs, endMs);
    for (const { line, words } of within) {
      const message = 'Talk within a dish that goes on after it: it is part of that dish.';
      left.push(leftOut('prose', fromLine(line, words), message));
    }
    const folded = foldRow(chapter.title);
    const isDoubtful = of === 'unlisted' && !namesDish(chapter.title) && !STAGE.test(folded);
    const isTalk =
      of === 'talk' ||
      (isDoubtful && range === null && (dishes.length > 0 || TIME_OF_DAY.test(folded)));
    if (isTalk) return { ...EMPTY, kind: 'talk', title: chapter.title, ...place };
    const dish = typeof of === 'number' ? dishes[of] : undefined;
    const bare = withoutAsides(chapter.title);
    const said = cleanTitle(bare.text);
    const named = dish ? dishTitle(dish, said, title) : stageTitle(said, title);
    const count = typeof bare.portions === 'number' ? { count: bare.portions, from } : null;
    const known = { ...EMPTY, ...dish, portions: dish?.portions ?? count };
    return { ...known, kind: 'recipe', title: named, ...place, said: range, isDoubtful };
  });
  return {
    segments: withUnchaptered(
      segments,
      slots.map(({ of }) => of),
      dishes,
      title,
    ),
    left,
  };
}

/** What is said from one time to another; null in texts without times. The last line of all has no end. */
function rangeOf(spoken: SpokenText, startMs: number, endMs: number | null): Placed['said'] {
  if (spoken.lines.every((line) => line.startMs === null)) return null;
  const toTheEnd = endMs === null || (spoken.endMs !== null && endMs >= spoken.endMs);
  return {
    start: offsetAt(spoken, startMs),
    end: toTheEnd ? spoken.text.length : offsetAt(spoken, endMs),
  };
}

/** A dish is called as its chapter is, where the two titles mean the same; else as the description has it. */
function dishTitle(dish: DescribedDish, chapter: string, title: Said | null): string {
  const own = dish.title?.text;
  if (own === undefined || isNamedByEpisode(dish, title)) return nameOf(title) ?? UNNAMED;
  const same = chapter.toLowerCase() === own.toLowerCase();
  return same ? chapter : longer(own, chapter);
}

/** The one title where it has all words of the other; else the description's own. */
function longer(own: string, chapter: string): string {
  const said = new Set(chapter.toLowerCase().split(/\s+/));
  const holds = own
    .toLowerCase()
    .split(/\s+/)
    .every((word) => said.has(word));
  return holds && chapter.length <= own.length + 20 ? chapter : own;
}

/** A dish that only chapters name: by its chapter, or as the episode where that names a stage. */
function stageTitle(chapter: string, title: Said | null): string {
  return STAGE.test(foldRow(chapter)) ? (nameOf(title) ?? UNNAMED) : chapter;
}

/** Dishes without a chapter stand behind the dish before them in the description, else before the first one. */
function withUnchaptered(
  segments: readonly Placed[],
  of: readonly (number | 'unlisted' | 'talk')[],
  dishes: readonly DescribedDish[],
  title: Said | null,
): Placed[] {
  const found = segments.map((segment, index) => ({ segment, dish: of[index] }));
  dishes.forEach((dish, index) => {
    if (of.includes(index)) return;
    const before = found.findLastIndex(
      (each) => typeof each.dish === 'number' && each.dish < index,
    );
    const first = found.findIndex((each) => typeof each.dish === 'number' && each.dish > index);
    const at =
      before >= 0 ? before + 1 : first >= 0 ? first : lastTalk(found.map((each) => each.segment));
    found.splice(at, 0, { segment: unplaced(dish, title), dish: index });
  });
  return found.map(({ segment }) => segment);
}

/** Before the talk that ends it all. */
function lastTalk(segments: readonly Placed[]): number {
  return segments.length > 1 && segments.at(-1)?.kind === 'talk'
    ? segments.length - 1
    : segments.length;
}
