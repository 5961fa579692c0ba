import { singular } from '#lib/units/plain-words';
import type { Language, Role } from '../language';
import { phrases, type Phrases } from '../phrases';
import { tokenize } from '../tokens';
import { FOODS } from './foods';
import { ofPart } from './part-scopes';
import { EACH, PORTION, SLICE, VESSELS } from './parts';
import { set } from './words';

const KNOWN: ReadonlySet<string> = new Set([...PORTION, ...SLICE, ...EACH]);

/** Words behind which a title says what comes with it: 'Skyr pots with oat crumb'. */
const BEHIND: ReadonlySet<string> = new Set(['with', 'in', 'on', 'and', 'from', 'for', 'under']);

/**
 * What may be said of one of the things that a title counts: pots and tubs are portions, all else pieces. None where
 * the last word is no plural, a part that is known anyway, or a food that is said of more than one: beans, noodles.
 */
export const titleParts: Language['titleParts'] = (title) => {
  const words = tokenize(title).filter(({ kind }) => kind === 'word');
  const behind = words.findIndex(({ folded }, at) => at > 0 && BEHIND.has(folded));
  const last = words.slice(0, behind < 0 ? words.length : behind).at(-1)?.folded;
  const one = singular(last ?? '');
  if (last === undefined || one === last || KNOWN.has(one) || FOODS.heads.has(one)) return null;
  return known(one);
};

/** What is set or served in pots of one portion each (common practice, no source). */
const IN_POTS = set(
  'mousse cheesecake yogurt yoghurt skyr oats bircher pudding chia custard posset parfait trifle jelly tiramisu cotta brulee compote ganache fool syllabub semifreddo granola muesli',
);

/** A pot of what is set in pots is a portion: 'per pot' of a chocolate mousse. */
export const titleVessels: Language['titleVessels'] = (title) =>
  tokenize(title).some(({ folded }) => IN_POTS.has(folded)) ? known('pot') : null;

const made = new Map<string, Phrases<readonly Role[]>>();

/** Tables of a few titles are kept, as each text of a dish asks for the same. */
function known(one: string): Phrases<readonly Role[]> {
  const old = made.get(one);
  if (old) return old;
  const scope = VESSELS.includes(one) ? 'portion' : 'each';
  const table = phrases(ofPart([one], scope).map(([phrase, role]) => [phrase, [role]] as const));
  if (made.size >= MOST_KEPT) made.clear();
  made.set(one, table);
  return table;
}

const MOST_KEPT = 50;
