import type { DishMention } from './dishes';
import type { Mark } from './marks';
import type { Quantity } from './quantity';
import type { Against, Scope } from './statement';
import { only, type Text } from './text';

/** A part that is said. */
export interface Mention {
  readonly mark: Mark<'scope'>;
  readonly scope: Scope;
  readonly against?: Against;
}

/** Whether the part is the subject of what follows: 'the whole tray is', 'per slice:'. */
export function followedByCopula({ marks, tokens }: Text, at: number): boolean {
  if (marks.at('copula', at)) return true;
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
  const counted = [...partsEaten(text, quantities), ...portionsOfIt(text, quantities)];
  for (const mark of [...text.marks.all('scope'), ...counted].sort((a, b) => a.from - b.from)) {
    if (mark.from < free || !isSaid(text, mark, ends)) continue;
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
    const as = named && !counts ? 'piece' : (unit ?? thing);
    const scope = as === 'portion' || as === 'slice' ? as : 'each';
    found.push({ mark, scope });
  }
  return found;
}

/** '2 slices', 'two bowls' that are no count of what the dish makes: a part without a name. */
function partsEaten(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, unit, noun, low, begin, end }) => {
    const thing = text.marks.at('thing', end);
    if (said !== null || unit || noun || low < 2 || !thing || thing.role.as === 'person') return [];
    return [{ role: PART, from: begin, to: thing.to }];
  });
}

/** 'four portions at 320 calories': what follows is of one of them. */
function portionsOfIt(text: Text, quantities: readonly Quantity[]): Mark<'scope'>[] {
  return quantities.flatMap(({ said, killed, from, end }, index) => {
    const next = quantities[index + 1];
    if (said?.kind !== 'portions' || killed !== null || !next) return [];
    // 'split six ways that's 498'
    // 'feeds four for a tenner' is the price of all.
    if (next.said?.kind === 'price' && text.marks.firstIn('serveTitle', end, next.begin)) return [];
    const ways = text.marks.at('serveBehind', end)?.to ?? end;
    if (
      next.begin - ways > 2 ||
      next.begin === end ||
      (next.said?.kind !== 'nutrient' && next.said?.kind !== 'price')
    )
      return [];
    if (
      !only(text, ways, next.begin, ways > end ? SHARED : ['lead', 'filler', 'small', 'joiner']) ||
      (text.tokens[end]?.kind !== 'word' && !/^[(@]$/.test(text.tokens[end]?.text ?? ''))
    )
      return [];
    const scope = said.unit === 'piece' ? 'each' : said.unit === 'slice' ? 'slice' : 'portion';
    return [{ role: { cat: 'scope', scope, link: 'free' }, from, to: end } as const];
  });
}

/** What may stand between a division and what one of its parts has. */
const SHARED = ['lead', 'filler', 'small', 'joiner', 'which', 'copula', 'so'] as const;

const PART = { cat: 'scope', scope: 'unknown', link: 'free' } as const;

function isSaid(text: Text, { role, from, to }: Mark<'scope'>, ends: ReadonlySet<number>): boolean {
  // 'per hundred calories'
  if (role.scope === 'per100g' && text.marks.at('noun', to)) return false;
  if (role.link === 'free' || role.link === 'counted' || role.link === 'ahead') return true;
  if (followedByCopula(text, to)) return true;
  if (role.scope === 'whole' && text.marks.at('noun', to)) return false;
  if (role.link === 'subject') return false;
  for (let back = 0; back <= 3; back += 1) {
    const at = from - back;
    if (ends.has(at) && only(text, at, from, ['filler', 'small', 'joiner'])) return true;
    if (text.marks.before('noun', at) && back <= 1) return true;
  }
  return false;
}
