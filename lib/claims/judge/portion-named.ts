import { ENGLISH } from '#lib/claims/english/english';
import { sentenceAround } from '#lib/claims/judge-beyond/words-around';
import type { Statement } from '#lib/claims/statement';
import type { Dish } from '#lib/episode/context';
import { words } from '#lib/foods/search-text';

/** Words behind a number among which the name of its portion begins: '115 calories of it in a deep bowl'. */
const BEHIND = 5;

type Portion = Dish['recipe']['portions'][number];

interface Name {
  readonly id: string;
  readonly name: string;
}

interface Named {
  readonly id: string;
  readonly at: number;
}

/**
 * The portion whose name stands in the sentence of a number, as its dish has it: behind it, or before it and not taken by
 * another number. Null where none is named, or two are.
 * @param spoken whether a line’s end is none of the sentence, as in captions
 * @example portionNamed('Barley skillet, one of two: 704 kcal', said, skillet, false) // its portion “one of two”
 */
export function portionNamed(
  text: string,
  statement: Pick<Statement, 'start' | 'end'>,
  { recipe }: Dish,
  spoken: boolean,
): string | null {
  const names = namesOf(recipe.portions);
  if (names.length === 0) return null;
  const found = (of: string): Named[] =>
    names
      .flatMap(({ id, name }) => {
        const at = of.lastIndexOf(name);
        return at < 0 ? [] : [{ id, at }];
      })
      .sort((a, b) => b.at - a.at);
  const { before, behind } = sentenceAround(text, statement);
  const near = spoken ? behind : firstLine(behind);
  const own = plain(near.split(ENGLISH.patterns.endOfNumber)[0] ?? '');
  const after = found(own).filter(({ at }) => own.slice(0, at).trim().split(' ').length <= BEHIND);
  const line = plain(spoken ? before : lastLine(before));
  const [last, other] = found(line).filter(
    ({ at }) => !ENGLISH.patterns.takenByNumber.test(line.slice(0, at + 1)),
  );
  // Two names are of two numbers, where one stands between them.
  const two = last && other && !/\d/.test(line.slice(other.at, last.at));
  const ids = new Set([...(last ? [last.id] : []), ...after.map(({ id }) => id)]);
  const [only, ...others] = ids;
  return only !== undefined && others.length === 0 && !two ? only : null;
}

const kept = new WeakMap<readonly Portion[], readonly Name[]>();

/** The names of more than one word, as `plain` has them; looked up once for all numbers of a dish. */
function namesOf(portions: readonly Portion[]): readonly Name[] {
  const known = kept.get(portions);
  if (known) return known;
  const made = portions.flatMap(({ id, name }) => {
    const own = plain(name);
    return words(name).length > 0 && own.trim().includes(' ') ? [{ id, name: own }] : [];
  });
  kept.set(portions, made);
  return made;
}

/** Its words in lower case with a blank between and around them. */
function plain(text: string): string {
  return ` ${
    text
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu)
      ?.join(' ') ?? ''
  } `;
}

const lastLine = (text: string) => text.split(/[\r\n]/).at(-1) ?? '';
const firstLine = (text: string) => text.split(/[\r\n]/)[0] ?? '';
