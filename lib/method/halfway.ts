import type { Token } from '#lib/episode/read-ingredient-tokens';
import type { Clause } from '#lib/method/clauses';
import { phrase } from '#lib/method/words-at';

const HALFWAY =
  /\b(turn|turning|flip|flipping|shake|shaking|stir|stirring|rotate|rotating|baste|basting|toss|tossing|swap|swapping)\b(?: [\w'-]+){0,6}? (?:halfway|half-way|half way|midway|once)\b/;
const HALFWAY_FIRST =
  /\b(?:halfway|half-way|midway)(?: [\w'-]+){0,4}?,? (turn|turning|flip|flipping|shake|shaking|stir|stirring|rotate|rotating|baste|basting|toss|tossing)\b/;

/** What is to be done halfway through a clause: 'turn', 'shake'; null where nothing is. */
export function halfwayOf(
  tokens: readonly Token[],
  clause: Pick<Clause, 'from' | 'next'>,
): string | null {
  const text = phrase(tokens, clause.from, clause.next);
  const verb = (HALFWAY.exec(text) ?? HALFWAY_FIRST.exec(text))?.[1];
  if (verb === undefined) return null;
  const bare: Readonly<Record<string, string>> = {
    flipping: 'flip',
    shaking: 'shake',
    stirring: 'stir',
    rotating: 'rotate',
    basting: 'baste',
    swapping: 'swap',
  };
  return bare[verb] ?? verb.replace(/ing$/, '');
}
