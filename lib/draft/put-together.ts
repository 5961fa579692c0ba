import { chapterSlots } from './chapter-slots';
import { cleanTitle } from './clean-title';
import { fromLine, leftOut, type Described, type DescribedDish } from './described';
import type { Draft, DraftSegment, From, LeftOut, Said } from './draft';
import { saidAmounts } from './said-amounts';
import { fromSpoken, offsetAt, type SpokenText } from './spoken';
import { turnsToKnown, turnsToNamed } from './turned-to';
import { lastAt } from '#lib/cut/last-at';
import { foldRow } from './text-rows';
import { STAGE } from './words';

/** What a dish is called that nothing names. */
export const UNNAMED = 'A dish without a name';

/** A segment with the stretch of what is said that is its own; null where nobody knows it. */
interface Placed extends DraftSegment {
  readonly said: { readonly start: number; readonly end: number } | null;
}

const EMPTY = {
  lines: [],
  portions: null,
  method: [],
  inMs: null,
  outMs: null,
  said: null,
} as const;
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
    segments: segments.map(({ said: _said, ...segment }) => segment),
    links,
    disclosure,
    left: left.sort((a, b) => ORDER[a.from.text] - ORDER[b.from.text] || a.from.line - b.from.line),
  };
}

const ORDER = { title: 0, description: 1, captions: 2, recipeData: 3 } as const;

interface Segments {
  readonly segments: readonly Placed[];
  readonly left: readonly LeftOut[];
}

function byChapters(described: Described, spoken: SpokenText | null, title: Said | null): Segments {
  const { chapters, dishes } = described;
  const left: LeftOut[] = [];
  const titles = dishes.map((dish) => dish.title?.text ?? null);
  const slots = chapterSlots(chapters, titles, spoken?.endMs ?? null);
  const segments = slots.map(({ of, chapter, endMs, within }): Placed => {
    const from = fromLine(chapter.line, chapter.words);
    const place = { from, inMs: chapter.startMs, outMs: after(chapter.startMs, endMs) };
    const range =
      spoken && spoken.lines.some(({ startMs }) => startMs !== null)
        ? {
            start: offsetAt(spoken, chapter.startMs),
            end: endMs === null ? spoken.text.length : offsetAt(spoken, endMs),
          }
        : null;
    for (const { line, words } of within) {
      const message = 'Talk within a dish that goes on after it: it is part of that dish.';
      left.push(leftOut('prose', fromLine(line, words), message));
    }
    if (of === 'talk') return { ...EMPTY, kind: 'talk', title: chapter.title, ...place };
    const dish = typeof of === 'number' ? dishes[of] : undefined;
    const named = dish ? dishTitle(dish, chapter.title, title) : stageTitle(chapter.title, title);
    return { ...EMPTY, ...dish, kind: 'recipe', title: named, ...place, said: range };
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

const after = (startMs: number, endMs: number | null) =>
  endMs !== null && endMs > startMs ? endMs : null;

/** A dish is called as its chapter is, where the two titles mean the same; else as the description has it. */
function dishTitle(dish: DescribedDish, chapter: string, title: Said | null): string {
  const own = dish.title?.text;
  if (own === undefined || (dish.isPart && title)) return nameOf(title) ?? UNNAMED;
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

function unplaced(dish: DescribedDish, title: Said | null, alone = false): Placed {
  const from = dish.title?.from ?? dish.lines[0]?.from ?? dish.method[0]?.from ?? NOWHERE;
  return {
    ...EMPTY,
    ...dish,
    kind: 'recipe',
    title:
      (dish.isPart && alone ? nameOf(title) : null) ?? dish.title?.text ?? nameOf(title) ?? UNNAMED,
    from,
  };
}

/** What the only dish of an episode is called by the episode's title: the words before a bar, a bracket or a dash. */
function nameOf(title: Said | null): string | null {
  if (title === null) return null;
  const [name = ''] = title.text.split(/\s[|–—-]\s|[|(\[]/);
  return /\p{L}{3}/u.test(name) ? cleanTitle(name) : title.text;
}

const NOWHERE: From = { text: 'title', line: 1, startMs: null, words: '' };

function byDishes(described: Described, spoken: SpokenText | null, title: Said | null): Segments {
  const dishes = described.dishes.map((dish, _, all) => unplaced(dish, title, all.length === 1));
  if (dishes.length > 0)
    return { segments: spoken ? placedByTalk(dishes, spoken) : dishes, left: [] };
  const turns = spoken ? turnsToNamed(spoken.text) : [];
  if (spoken && turns.length > 0) {
    const segments = turns.map(({ at, end, title: named }, index): Placed => {
      const from = fromSpoken(spoken, at, end);
      const place = stretch(spoken, at, turns[index + 1]?.at);
      return { ...EMPTY, kind: 'recipe', title: named, from, ...place };
    });
    return { segments: inOrder(segments), left: [] };
  }
  if (title)
    return {
      segments: [{ ...EMPTY, kind: 'recipe', title: nameOf(title) ?? UNNAMED, from: title.from }],
      left: [],
    };
  const first = spoken?.lines[0];
  if (!spoken || !first) return { segments: [], left: [] };
  const end = Math.min(spoken.text.length, (spoken.lines[1]?.start ?? spoken.text.length + 1) - 1);
  return {
    segments: [{ ...EMPTY, kind: 'recipe', title: UNNAMED, from: fromSpoken(spoken, 0, end) }],
    left: [],
  };
}

/** Dishes of a description where the talk turns to each of them, if it is found for all. */
function placedByTalk(dishes: readonly Placed[], spoken: SpokenText): readonly Placed[] {
  const turns =
    dishes.length > 1
      ? turnsToKnown(
          spoken.text,
          dishes.map(({ title }) => title),
        )
      : null;
  if (turns === null) return dishes;
  return inOrder(
    dishes.map((dish, index) => {
      const at = turns[index];
      return at === undefined ? dish : { ...dish, ...stretch(spoken, at, turns[index + 1]) };
    }),
  );
}

/** Where two begin at one time, or a later one before, the text's times are too coarse for any of them. */
function inOrder(segments: readonly Placed[]): readonly Placed[] {
  const rising = segments.every(
    ({ inMs }, index) => inMs !== null && (index === 0 || inMs > (segments[index - 1]?.inMs ?? -1)),
  );
  return rising ? segments : segments.map((each) => ({ ...each, inMs: null, outMs: null }));
}

/** Times of a stretch of what is said: from its first line to the first line of the next. */
function stretch(
  spoken: SpokenText,
  at: number,
  next: number | undefined,
): Pick<Placed, 'inMs' | 'outMs' | 'said'> {
  const inMs = lastAt(spoken.lines, at)?.startMs ?? null;
  const nextMs = next === undefined ? spoken.endMs : (lastAt(spoken.lines, next)?.startMs ?? null);
  return {
    inMs,
    outMs: inMs === null ? null : after(inMs, nextMs),
    said: { start: at, end: next ?? spoken.text.length },
  };
}

/** Dishes that no list gives ingredients get those that are said in their stretch; portions alike. */
function withAmounts(segments: readonly Placed[], spoken: SpokenText, left: LeftOut[]): Placed[] {
  const dishes = segments.filter(({ kind }) => kind === 'recipe').length;
  return segments.map((segment) => {
    const { kind, lines, portions } = segment;
    if (kind === 'talk' || (lines.length > 0 && portions !== null)) return segment;
    const range = segment.said ?? (dishes === 1 ? { start: 0, end: spoken.text.length } : null);
    if (range === null) return segment;
    const said = saidAmounts(spoken, range.start, range.end);
    const wanted = said.left.filter(({ why }) =>
      why === 'amount' ? lines.length === 0 : portions === null,
    );
    left.push(...wanted.slice(0, 200));
    return {
      ...segment,
      lines: lines.length > 0 ? lines : said.lines.slice(0, 400),
      portions: portions ?? said.portions,
    };
  });
}

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
