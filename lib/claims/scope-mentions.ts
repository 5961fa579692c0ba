import type { DishMention } from './dishes';
import type { Mark } from './marks';
import { isDish } from './prices';
import type { Quantity } from './quantity';
import type { Against, Scope } from './statement';
import { unnamedParts } from './unnamed-parts';
import { only, type Text } from './text';

/** A part that is said. */
export interface Mention {
  readonly mark: Mark<'scope'>;
  readonly scope: Scope;
  readonly against?: Against;
}

/** Whether the part is the subject of what follows: 'the whole tray is', 'per slice:'. */
export function followedByCopula({ marks, tokens, language }: Text, from: number): boolean {
  // 'for a plate of this you're at'
  const at = marks.at('ofThem', from)?.to ?? from;
  if (marks.at('copula', at)) return true;
  // 'all in, it comes to'
  const comma = tokens[at]?.text === ',' ? at + 1 : at;
  const word = tokens[comma]?.folded ?? '';
  // 'in a pot that was 610' goes on with the pot.
  const goesOn = comma === at && language.numbers.pointers.has(word);
  const subject = language.claims.subjects.has(word) && !goesOn;
  if (subject && marks.at('copula', comma + 1)) return true;
  // 'a quarter's four ten calories'
  if (/['’]s$/.test(tokens[at - 1]?.text ?? '')) return true;
  return (
    tokens[at]?.text === ':' ||
    tokens[at]?.text === '?' ||
    marks.at('adds', at) !== undefined ||
    marks.at('cost', at) !== undefined
  );
}

/** Tokens from the name of a dish to 'each', which then is a piece of that dish. */
const NAMED = 14;

/** The parts that are said, without those that only may be: 'the tray' without a verb, 'a bowl' away from a number. */
export function mentionsOf(
  text: Text,
  quantities: readonly Quantity[],
  dishes: readonly DishMention[],
): Mention[] {
  const found: Mention[] = [];
  const ends = new Set<number>();
  const begins = new Set(quantities.map(({ begin }) => begin));
  for (const { end, noun } of quantities) {
    ends.add(end);
    if (noun) ends.add(noun.to);
  }
  const things = quantities.filter(
    ({ said, killed }) => said?.kind === 'portions' && killed === null,
  );
  let free = 0;
  let counting = 0;
  let naming = 0;
  const others = unnamedParts(text, quantities);
  for (const mark of [...text.marks.all('scope'), ...others].sort((a, b) => a.from - b.from)) {
    const ahead = mark.role.scope === 'whole' && begins.has(mark.to) && isTotal(text, mark);
    if (mark.from < free || !(ahead || isSaid(text, mark, ends))) continue;
    // 'in total for the day' is of the day.
    const day = text.marks.at('scope', mark.to)?.role.scope;
    if (mark.role.scope === 'whole' && (day === 'day' || day === 'soFar')) continue;
    if (isDenied(text, mark)) continue;
    free = mark.to;
    const { role } = mark;
    if (role.link !== 'counted') {
      found.push({ mark, scope: role.scope, ...(role.against ? { against: role.against } : {}) });
      continue;
    }
    while ((things[counting]?.begin ?? Infinity) < mark.from) counting += 1;
    const unit = things[counting - 1]?.said?.unit;
    const thing = text.marks.lastIn('thing', mark.from - 14, mark.from)?.role.as;
    while ((dishes[naming]?.to ?? Infinity) <= mark.from) naming += 1;
    const dish = dishes[naming - 1];
    const named = dish && dish.from > mark.from - NAMED ? dish : undefined;
    const counts = text.marks.lastIn('thing', named?.to ?? 0, mark.from);
    const said =
      unit === 'portion' && text.language.titleParts(text.context.dish ?? '') ? 'piece' : unit;
    const vessel = named && text.marks.at('thing', named.to - 1)?.role.as === 'portion';
    const own = named && (vessel ? 'portion' : 'piece');
    const as = own && !counts ? own : (said ?? thing);
    const scope = as === 'portion' || as === 'slice' ? as : 'each';
    found.push({ mark, scope });
  }
  return found;
}

/** 'one mug of couscous': so much of a food, and no part of the dish. */
export function holdsFood(text: Text, { to }: Mark<'scope'>): boolean {
  const { marks, language, tokens } = text;
  const of = language.numbers.of.has(tokens[to]?.folded ?? '');
  const unit = (marks.before('unit', to + 1) ?? marks.before('unit', to))?.role;
  const food = of && unit?.of === 'container' ? text.food(to + 1) : null;
  return food !== null && food.to - to <= LONGEST_FOOD && !isDish(text, food.name);
}

/** 'grand total seven pounds': right before a number, and not right behind another. */
const isTotal = ({ marks, tokens }: Text, { from, role }: Mark<'scope'>) =>
  role.link !== 'free' &&
  marks.before('noun', from) === undefined &&
  tokens[from - 1]?.kind !== 'number';

/** '(not per person)'; and 'Fat, total 9.8 g', where the word belongs to the noun. */
function isDenied({ marks, tokens }: Text, { from, to, role }: Mark<'scope'>): boolean {
  const noun = tokens[from - 1]?.text === ',' && marks.before('noun', from - 1) !== undefined;
  const total = role.scope === 'whole' && to - from === 1 && noun && tokens[to]?.kind === 'number';
  // 'half of what you need in a day'
  const need =
    role.scope === 'day' &&
    marks.before('target', from) !== undefined &&
    marks.before('eat', from) === undefined;
  return total || need || (role.link === 'free' && marks.before('not', from) !== undefined);
}

/** Tokens from 'of' to the end of the food that a vessel holds. */
const LONGEST_FOOD = 4;

function isSaid(text: Text, mark: Mark<'scope'>, ends: ReadonlySet<number>): boolean {
  const { role, from, to } = mark;
  if (holdsFood(text, mark)) return false;
  // 'per hundred calories'
  if (role.scope === 'per100g' && text.marks.at('noun', to)) return false;
  if (role.link === 'free' || role.link === 'counted' || role.link === 'ahead') return true;
  if (followedByCopula(text, to)) return true;
  if (role.scope === 'whole' && text.marks.at('noun', to)) return false;
  // 'seven pounds the pot'
  if (role.link === 'subject') return role.scope === 'whole' && ends.has(from);
  for (let back = 0; back <= 3; back += 1) {
    const at = from - back;
    // '346 calories, that's a bowl'
    const links = ['filler', 'small', 'joiner', 'which', 'ofThem'] as const;
    if (ends.has(at) && only(text, at, from, links)) return true;
    if (text.marks.before('noun', at) && back <= 1) return true;
  }
  return false;
}
