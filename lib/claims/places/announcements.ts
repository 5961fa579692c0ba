import { singular } from '#lib/units/plain-words';
import { tokenize, type Token } from '#lib/claims/tokens';
import type { DishName } from './dish-names';

/** Where the talk turns to another dish. */
export interface Announcement {
  /** Offset of the words that say so: "first up", or of the dish's name where it is a line of its own. */
  readonly at: number;
  readonly segmentId: string;
}

/** Words by which somebody turns to a dish, before its name. */
const TURNS = [
  'first up',
  'up first',
  'first off',
  'first dish',
  'next up',
  'up next',
  'next dish',
  'next is',
  'next comes',
  'now for',
  'now the',
  'now on to',
  'on to',
  'onto',
  'moving on',
  'over to',
  'start with',
  'starting with',
  'started with',
  'begin with',
  'kick off with',
  'kicking off with',
  'get into',
  'time for',
  'then comes',
  'last up',
  'last dish',
  'last but not least',
  'finally',
  'dish one',
  'dish two',
  'dish three',
  'dish number',
  'recipe one',
  'recipe two',
  'recipe three',
  'recipe number',
  'breakfast is',
  'lunch is',
  'dinner is',
  'supper is',
  'dessert is',
  'for breakfast',
  'for lunch',
  'for dinner',
  'for supper',
  'for dessert',
  'to finish',
  'were making',
  'we are making',
  'im making',
  'i am making',
  'lets make',
].map((phrase) => phrase.split(' '));

const BY_FIRST = new Map<string, string[][]>();
for (const phrase of TURNS) {
  const [first = ''] = phrase;
  BY_FIRST.set(first, [...(BY_FIRST.get(first) ?? []), phrase]);
}

/** Words between the turn and the dish's name: 'first up, a very simple'. */
const REACH = 7;

/**
 * Where a text turns from one dish to another by naming it: "first up, the barley skillet". A dish that is only named
 * on the way is none.
 */
export function announcements(text: string, names: readonly DishName[]): Announcement[] {
  const heads = headsOf(names);
  if (heads.size === 0) return [];
  const tokens = tokenize(text);
  const found: Announcement[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const phrase = turnAt(tokens, at);
    if (phrase === 0) continue;
    const dish = dishBehind(tokens, at + phrase, heads);
    if (dish) found.push({ at: tokens[at]?.start ?? 0, segmentId: dish.segmentId });
  }
  return found;
}

/** Last words of titles that one dish alone has. */
function headsOf(names: readonly DishName[]): Map<string, DishName> {
  const heads = new Map<string, DishName>();
  for (const name of names) {
    const alone = names.every((other) => other === name || !other.stems.includes(name.head));
    if (name.head !== '' && alone) heads.set(name.head, name);
  }
  return heads;
}

/** How many tokens the turn of speech at a token has; 0 for none. */
function turnAt(tokens: readonly Token[], at: number): number {
  const phrases = BY_FIRST.get(tokens[at]?.folded ?? '') ?? [];
  const fits = phrases.filter((phrase) =>
    phrase.every((word, index) => tokens[at + index]?.folded === word),
  );
  return fits.reduce((longest, phrase) => Math.max(longest, phrase.length), 0);
}

function dishBehind(
  tokens: readonly Token[],
  from: number,
  heads: ReadonlyMap<string, DishName>,
): DishName | null {
  let words = 0;
  for (let at = from; at < tokens.length && words < REACH; at += 1) {
    const token = tokens[at];
    if (!token || /^[.!?]$/.test(token.text)) return null;
    if (token.kind !== 'word') continue;
    words += 1;
    const dish = heads.get(singular(token.folded));
    if (dish) return dish;
  }
  return null;
}
