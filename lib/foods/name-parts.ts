import { KINDS, TAIL } from '#lib/foods/match-words';
import { words } from '#lib/foods/search-text';

/** A part of a food's name between commas: the ways to say it, each as singulars. */
export interface NamePart {
  /** More than one where the name says 'or': 'cos or romaine'. */
  readonly ways: readonly (readonly string[])[];
  /** Whether it only says of which kind the food is ('Nuts, almonds'), so that nobody needs to say it. */
  readonly isKind: boolean;
}

/** What stands in brackets and is no other name: '(includes sourdough)', '(70% and over)', '(less than 60%)'. */
const NO_NAME = /\b(?:includes?|from|made|for|not|may|than|all|such|with)\b|\d/;

/**
 * The parts of a name of the reference table, without how it was made; what stands in brackets is another way to say
 * the part before it.
 * @example nameParts('Lettuce, cos or romaine, raw')[1]?.ways // [['co'], ['romaine']]
 */
export function nameParts(name: string): readonly NamePart[] {
  const known = kept.get(name) ?? partsOf(name);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(name, known);
  return known;
}

/** Parts of names that were asked for: as many as a table has that is searched again and again. */
const MOST_KEPT = 20_000;
const kept = new Map<string, readonly NamePart[]>();

function partsOf(name: string): readonly NamePart[] {
  return name
    .split(/,(?![^()]*\))/)
    .map((part, at): NamePart => {
      const [own = '', ...brackets] = part.toLowerCase().split('(');
      const behind = brackets.map((bracket) => bracket.split(')')[1] ?? '').join(' ');
      const others = brackets.map((bracket) => bracket.split(')')[0] ?? '');
      const ways = [
        ...`${own} ${behind}`.replace(TAIL, ' ').split(/\bor\b|\//),
        ...others.filter((other) => !NO_NAME.test(other)).flatMap((other) => other.split(',')),
      ]
        .map((way) => words(way).map(({ stem }) => stem))
        .filter((way) => way.length > 0);
      return { ways, isKind: at === 0 && ways.some((way) => KINDS.has(way.join(' '))) };
    })
    .filter(({ ways }) => ways.length > 0);
}
