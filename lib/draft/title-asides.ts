import { COUNTING, PACKS, UNITS } from '#lib/episode/read-ingredient-words';
import { singular } from '#lib/units/plain-words';
import {
  portionsWithin,
  readCount,
  readPortions,
  type SaidCount,
  type SaidPortions,
} from './portions-said';
import { titleStems } from './same-title';
import { foldRow } from './text-rows';
import { NO_YIELD, ONES, VESSELS, WHOLES } from './words';

/**
 * What is said beside a title: into how many it goes (`portions`), how many vessels or pieces of it there are, how much
 * of it as one says it of an ingredient too, or numbers of nutrients.
 */
export type AsideKind = 'portions' | 'vessels' | 'amount' | 'numbers';

/** A title without what is said beside it. */
export interface BareTitle {
  readonly text: string;
  readonly portions: SaidPortions | null;
  readonly asides: readonly AsideKind[];
}

interface Aside {
  readonly kind: AsideKind;
  readonly portions: SaidPortions | null;
}

const BRACKETS = /\s*[([]([^()[\]]{1,80})[)\]]\s*:?\s*$/;
const TAIL = /\s*(\s[-–—]\s|[|·]|[,:](?=\s))\s*((?:[^|·,:()[\]]|(?<=\d),(?=\d)){1,60})$/;
const NUMBERS =
  /\d\s*(?:k?cals?|calories|kj)\b|\d\s*g?\s*(?:of )?(?:proteins?|carbs?|fats?|fib(?:re|er))\b|\d\s*g?\s*p\b.*\d\s*g?\s*[cf]\b/;
const LONGEST = 200;
/** Portions, numbers and an amount, each once. */
const MOST_ASIDES = 4;

/**
 * Takes off the end of a title what is said beside it, in brackets or behind a dash, a bar or a comma: portions,
 * vessels, amounts, numbers of nutrients. What is no number of it stays: "(two ways)", "(30 min)".
 * @example withoutAsides('Lentil salad (3 boxes)') // { text: 'Lentil salad', portions: 3, asides: ['vessels'] }
 */
export function withoutAsides(title: string): BareTitle {
  let text = title;
  let portions: SaidPortions | null = null;
  const asides: AsideKind[] = [];
  if (title.length > LONGEST) return { text, portions, asides };
  for (let time = 0; time < MOST_ASIDES; time += 1) {
    const found = ending(text);
    const said = found && /\p{L}/u.test(found.before) ? asidesOf(found) : [];
    if (found === null || said.length === 0) break;
    text = found.before;
    portions = said.find((aside) => aside.portions !== null)?.portions ?? portions;
    asides.push(...said.map(({ kind }) => kind));
  }
  return { text, portions, asides };
}

/** The last words of a title that stand apart. */
interface Ending {
  readonly before: string;
  readonly words: string;
  /** They stand behind a comma or a colon, as an ingredient's amount does: "Carrots, 3 pieces". */
  readonly plain: boolean;
}

function ending(text: string): Ending | null {
  const brackets = BRACKETS.exec(text);
  if (brackets)
    return {
      before: text.slice(0, brackets.index),
      words: foldRow(brackets[1] ?? ''),
      plain: false,
    };
  const tail = TAIL.exec(text);
  if (!tail) return null;
  const plain = /[,:]/.test(tail[1] ?? '');
  return { before: text.slice(0, tail.index), words: foldRow(tail[2] ?? ''), plain };
}

/** What the last words say: one thing, or several that are parted by commas: "(2 jars, 390 kcal each)". */
function asidesOf(found: Ending): Aside[] {
  const parts = found.words.split(/[,;|·]\s+/);
  const each = parts.map((words) => asideOf({ ...found, words }));
  const all = each.filter((aside) => aside !== null);
  // Beside numbers of nutrients grams are of one too: "(410 kcal, 22 g P)".
  const numbered = all.some(({ kind }) => kind === 'numbers');
  if (all.length === parts.length) return all.filter(({ kind }) => !numbered || kind !== 'amount');
  const whole = asideOf(found);
  return whole === null ? [] : [whole];
}

function asideOf({ before, words, plain }: Ending): Aside | null {
  const said = readPortions(words, true) ?? portionsWithin(words);
  if (said !== null) return { kind: 'portions', portions: said };
  if (NUMBERS.test(words) && !words.includes('%')) return { kind: 'numbers', portions: null };
  const count = plain ? null : readCount(words);
  return count && yieldOf(count, before);
}

/** What a count of things beside a title says of it: "8 burritos" of "Freezer burritos" are pieces of the dish. */
function yieldOf({ portions, things }: SaidCount, title: string): Aside | null {
  const words = things.split(' ').map(singular);
  const [first = '', last = ''] = [words[0], words.at(-1)];
  if (words.some((word) => NO_YIELD.has(word))) return null;
  if (ONES.has(last)) return { kind: 'portions', portions };
  if (VESSELS.has(last) || titleStems(title).includes(last)) return { kind: 'vessels', portions };
  if (WHOLES.has(last)) return { kind: 'vessels', portions: 'unclear' };
  const counted = UNITS.has(first) || PACKS.has(first) || COUNTING.has(first);
  return counted || words.length === 1 ? { kind: 'amount', portions: 'unclear' } : null;
}
