import { ENGLISH } from '#lib/claims/english/english';
import { phraseAt } from '#lib/claims/words/phrases';
import { tokenize, type Token } from '#lib/claims/words/tokens';
import type { DishName } from './dish-names';

/** Where the talk turns to another dish. */
interface Announcement {
  /** Offset of the words that say so: "first up", or of the dish's name where it is a line of its own. */
  readonly at: number;
  readonly segmentId: string;
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
    const turn = phraseAt(ENGLISH.places.turns, tokens, at);
    if (!turn) continue;
    const dish = dishBehind(tokens, turn.next, heads);
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
    const dish = heads.get(ENGLISH.singular(token.folded));
    if (dish) return dish;
  }
  return null;
}
