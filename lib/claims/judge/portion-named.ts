import type { Statement } from '#lib/claims/statement';
import type { Dish } from '#lib/episode/context';
import { words } from '#lib/foods/search-text';

/** Words of a line before a number that are looked at, in UTF-16 units. */
const REACH = 120;

/**
 * The portion that is named before a number in its line, as its dish has it; null where none is, or two are.
 * @example portionNamed('Barley skillet, one of two: 704 kcal', said, skillet) // its portion “one of two”
 */
export function portionNamed(
  text: string,
  { start }: Pick<Statement, 'start'>,
  { recipe }: Dish,
): string | null {
  if (recipe.portions.length === 0) return null;
  const before = text.slice(Math.max(0, start - REACH), start);
  const line = before.slice(Math.max(before.lastIndexOf('\n'), before.lastIndexOf('\r')) + 1);
  const said = ` ${
    line
      .toLowerCase()
      .match(/[\p{L}\p{N}]+/gu)
      ?.join(' ') ?? ''
  } `;
  const named = recipe.portions.filter(({ name }) => {
    const own = name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [];
    return words(name).length > 0 && own.length > 1 && said.includes(` ${own.join(' ')} `);
  });
  const [only, ...others] = named;
  return only && others.length === 0 ? only.id : null;
}
