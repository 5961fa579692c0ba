import { singular } from '#lib/units/plain-words';
import type { Language, Role } from '../language';
import { phrases, type Phrases } from '../words/phrases';
import type { Title } from '../words/title';
import { CLAIM_WORDS } from './claim-words';
import { FOODS } from './foods';
import { ofPart } from './part-scopes';
import { EACH, PORTION, SLICE, VESSELS, WHOLE } from './parts';
import { framed, set } from './words';

const KNOWN: ReadonlySet<string> = new Set([...PORTION, ...SLICE, ...EACH]);

type Named = Pick<Title, 'tokens'>;

/** Words behind which a title says what comes with it: 'Skyr pots with oat crumb'. */
const BEHIND: ReadonlySet<string> = new Set(['with', 'in', 'on', 'and', 'from', 'for', 'under']);

/**
 * What may be said of one of the things that a title counts: pots and tubs are portions, all else pieces. None where
 * the last word is no plural, a part that is known anyway, or a food that is said of more than one: beans, noodles.
 */
export const titleParts: Language['titleParts'] = (title) => {
  const last = headOf(title);
  const one = singular(last ?? '');
  if (last === undefined || one === last || KNOWN.has(one) || FOODS.heads.has(one)) return null;
  return known(one, wordBefore(title, last));
};

/** The word before the last one of a title, with which a part is called as well: 'hush' of hush puppies. */
function wordBefore({ tokens }: Named, last: string): string | null {
  const words = tokens.filter(({ kind }) => kind === 'word');
  const at = words.findIndex(({ folded }) => folded === last);
  return words[at - 1]?.folded ?? null;
}

/** The last word of a title before what says what comes with it. */
function headOf({ tokens }: Named): string | undefined {
  const words = tokens.filter(({ kind }) => kind === 'word');
  const behind = words.findIndex(({ folded }, at) => at > 0 && BEHIND.has(folded));
  return words.slice(0, behind < 0 ? words.length : behind).at(-1)?.folded;
}

/** What is set or served in pots of one portion each (common practice, no source). */
const IN_POTS = set(
  'mousse cheesecake yogurt yoghurt skyr oats bircher pudding chia custard posset parfait trifle jelly tiramisu cotta brulee compote ganache fool syllabub semifreddo granola muesli',
);

/** A pot of what is set in pots is a portion: 'per pot' of a chocolate mousse. */
export const titleVessels: Language['titleVessels'] = (title) =>
  title.tokens.some(({ folded }) => IN_POTS.has(folded)) ? known('pot') : single(title);

/** One of what a title names in the singular: 'one dosa' of a paneer dosa. */
function single(title: Named): Phrases<readonly Role[]> | null {
  const last = headOf(title);
  if (last === undefined || singular(last) !== last) return null;
  if (KNOWN.has(last) || WHOLE.includes(last)) return null;
  if (CLAIM_WORDS.dishes.has(last)) return null;
  const old = singles.get(last);
  if (old) return old;
  const frames = 'one {}, in one {}, for one {}, each {}, in each {}, every {}, a single {}, 1 {}';
  const role: readonly Role[] = [{ cat: 'scope', scope: 'each', link: 'free' }];
  const table = phrases(framed(frames, [last]).map((phrase) => [phrase, role] as const));
  if (singles.size >= MOST_KEPT) singles.clear();
  singles.set(last, table);
  return table;
}

const singles = new Map<string, Phrases<readonly Role[]>>();

const made = new Map<string, Phrases<readonly Role[]>>();

/** Tables of a few titles are kept, as each text of a dish asks for the same. */
function known(one: string, before: string | null = null): Phrases<readonly Role[]> {
  const names = before === null ? [one] : [one, `${before} ${one}`];
  const key = names.join();
  const old = made.get(key);
  if (old) return old;
  const scope = VESSELS.includes(one) ? 'portion' : 'each';
  const table = phrases(ofPart(names, scope).map(([phrase, role]) => [phrase, [role]] as const));
  if (made.size >= MOST_KEPT) made.clear();
  made.set(key, table);
  return table;
}

const MOST_KEPT = 50;
