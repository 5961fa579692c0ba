import { lastAt } from '#lib/cut/last-at';
import type { Described } from './described';
import type { Said } from './draft';
import { after, EMPTY, nameOf, UNNAMED, unplaced, type Placed, type Segments } from './placed';
import { fromSpoken, type SpokenText } from './spoken';
import { turnsToKnown, turnsToNamed } from './turned-to';

/** Segments by the dishes of a description, else by those that the talk turns to, else the one that the title names. */
export function byDishes(
  described: Described,
  spoken: SpokenText | null,
  title: Said | null,
): Segments {
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
