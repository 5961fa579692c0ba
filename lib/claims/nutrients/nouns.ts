import { NUTRIENTS } from '#lib/foods/nutrients';
import type { Noun, Quantity } from '../numbers/quantity';
import { isInRow } from '../words/macros';
import type { NutrientUnit } from '../statement';
import type { Text } from '../words/text';

/** All names of nutrients outside numbers and claims, and the letters of the macronutrients where P is one of them. */
export function nounsOf(
  text: Text,
  quantities: readonly Quantity[],
  taken: ReadonlySet<number>,
): Noun[] {
  const { tokens, language } = text;
  const inside = new Set<number>();
  for (const { begin, end } of quantities) for (let at = begin; at < end; at += 1) inside.add(at);
  const found: Noun[] = [];
  const letters = lettersOf(text, quantities);
  for (let at = 0; at < tokens.length; at += 1) {
    if (inside.has(at) || taken.has(at)) continue;
    const letter = letters.has(at)
      ? language.letters.get(tokens[at]?.text.toUpperCase() ?? '')
      : undefined;
    const mark = nounAt(text, at);
    if (letter) {
      found.push({
        nutrient: letter,
        unit: NUTRIENTS[letter].unit as NutrientUnit,
        from: at,
        to: at + 1,
      });
    } else if (mark && isBehind(mark.role.of, found.at(-1), at)) {
      found.push({ nutrient: mark.role.nutrient, unit: mark.role.unit, from: at, to: mark.to });
      at = mark.to - 1;
    }
  }
  return found;
}

/** The name of a nutrient that begins at a token; not the 'sat' of 'are sat at'. */
function nounAt({ marks }: Text, at: number) {
  const noun = marks.at('noun', at);
  const verb = noun && (marks.at('copula', at) ?? marks.at('copula', at - 1));
  return verb && verb.to > noun.to ? undefined : noun;
}

/** Tokens from a nutrient to the name of a part of it. */
const PART = 12;

/** Whether the nutrient that a name is a part of was named last. */
const isBehind = (of: Noun['nutrient'] | undefined, last: Noun | undefined, at: number) =>
  of === undefined || (last?.nutrient === of && at - last.to <= PART);

/** Tokens that are letters of macronutrients: those beside a number or each other, in a sentence where P stands so. */
function lettersOf(text: Text, quantities: readonly Quantity[]): Set<number> {
  const { tokens, language, sentences } = text;
  const proven = text.macros();
  const beside = quantities.flatMap(({ from, to, end, unit }) =>
    [from - 1, unit ? end : to].filter((at) => language.letters.has(tokens[at]?.text ?? '')),
  );
  if (proven.size === 0) return new Set();
  const rows = tokens.flatMap((_, at) => (isInRow(text, at) ? [at] : []));
  return new Set([...beside, ...rows].filter((at) => proven.has(sentences.of[at] ?? 0)));
}
