/** One shortcut: the keys one after the other, what it does in words, and where it leads. */
export interface Shortcut {
  readonly keys: readonly string[];
  readonly words: string;
  readonly does:
    | { readonly kind: 'go'; readonly href: string }
    | { readonly kind: 'focus'; readonly id: string }
    | { readonly kind: 'help' }
    /** The page itself does it: it hears of it as a `PAGE_KEY` event with this word. */
    | { readonly kind: 'page'; readonly does: string }
    /** What the browser does by itself with what has the focus; it stands in the list alone. */
    | { readonly kind: 'told' };
}

/** The event by which a page hears of its own keys. */
export const PAGE_KEY = 'slate-page-key';

const EDIT_PATH = /^\/episodes\/[^/]+\/edit$/;

/** The keys of the page of the edit. */
const EDIT_KEYS: readonly Shortcut[] = [
  { keys: ['j'], words: 'next statement (↓ on one)', does: { kind: 'page', does: 'next' } },
  { keys: ['k'], words: 'statement before (↑ on one)', does: { kind: 'page', does: 'before' } },
  { keys: ['o'], words: 'next that is off', does: { kind: 'page', does: 'off' } },
  { keys: ['u'], words: 'next that can’t be said', does: { kind: 'page', does: 'unknown' } },
  { keys: ['Enter'], words: 'open the statement', does: { kind: 'told' } },
];

const READING_PATH = /^\/episodes\/[^/]+\/reading$/;

/** The keys of “Read to camera”, which listens to them itself: a pedal knows no list. */
const READING_KEYS: readonly Shortcut[] = [
  { keys: ['Space'], words: 'go and stop', does: { kind: 'told' } },
  { keys: ['PageDown'], words: 'next sentence or shot (↓, →, pedal)', does: { kind: 'told' } },
  { keys: ['PageUp'], words: 'sentence before (↑, ←, pedal)', does: { kind: 'told' } },
  { keys: ['Home'], words: 'to the beginning', does: { kind: 'told' } },
  { keys: ['End'], words: 'to the end', does: { kind: 'told' } },
  { keys: ['Escape'], words: 'stop', does: { kind: 'told' } },
];

const EPISODE_PATH = /^\/episodes\/([^/]+)/;

/** The id of the episode that a path lies in, or null. `episodeIdIn('/episodes/a1/day')` → `'a1'`. */
export function episodeIdIn(path: string): string | null {
  return EPISODE_PATH.exec(path)?.[1] ?? null;
}

/** All keys that mean something on a page, in the order of the help list. */
export function shortcutsFor(path: string): readonly Shortcut[] {
  const go = (keys: string, words: string, href: string): Shortcut => ({
    keys: keys.split(' '),
    words,
    does: { kind: 'go', href },
  });
  const id = episodeIdIn(path);
  const inEpisode = id
    ? [
        go('r', 'running order', `/episodes/${id}`),
        go('d', 'day', `/episodes/${id}/day`),
        go('s', 'shopping', `/episodes/${id}/shopping`),
        go('e', 'the edit', `/episodes/${id}/edit`),
        go('p', 'publish', `/episodes/${id}/publish`),
      ]
    : [];
  return [
    { keys: ['?'], words: 'this list', does: { kind: 'help' } },
    ...inEpisode,
    ...(EDIT_PATH.test(path) ? EDIT_KEYS : []),
    ...(READING_PATH.test(path) ? READING_KEYS : []),
    go('g s', 'season', '/'),
    go('g p', 'pantry', '/pantry'),
    go('g k', 'kitchen', '/kitchen'),
    { keys: ['/'], words: 'first field of the page', does: { kind: 'focus', id: 'main' } },
  ];
}

/** What a key leads to: a shortcut, the beginning of one, or nothing. */
export interface KeyOutcome {
  readonly pending: readonly string[];
  readonly shortcut: Shortcut | null;
}

/**
 * Follows the keys pressed so far by one more. A key that continues nothing may begin anew.
 * `nextKey(list, ['g'], 's')` finds 'g s'; `nextKey(list, [], 'g')` waits for the next key.
 */
export function nextKey(
  shortcuts: readonly Shortcut[],
  pending: readonly string[],
  key: string,
): KeyOutcome {
  const pressed = [...pending, key];
  const begins = ({ keys }: Shortcut) => pressed.every((k, i) => keys[i] === k);
  const candidates = shortcuts.filter((each) => each.does.kind !== 'told' && begins(each));
  const found = candidates.find(({ keys }) => keys.length === pressed.length);
  if (found) return { pending: [], shortcut: found };
  if (candidates.length > 0) return { pending: pressed, shortcut: null };
  if (pending.length > 0) return nextKey(shortcuts, [], key);
  return { pending: [], shortcut: null };
}

/** Where keys are text and no shortcuts. */
export interface KeyPlace {
  readonly tagName: string;
  readonly isContentEditable: boolean;
}

/** Whether a person is typing there, so that every shortcut keeps silent. */
export function isTyping(place: KeyPlace | null): boolean {
  return (
    place !== null &&
    (place.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(place.tagName))
  );
}
