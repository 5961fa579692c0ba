import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens from a nutrient to the words that take it back, and from these to the one that stands. */
const REACH = 2;
const BEHIND = 3;

/**
 * 'thirty one grams of fat, sorry, protein': the number stays, and counts what is said in the end. Where another number
 * follows, the correction is one of numbers.
 */
export function correctNouns(text: Text, quantities: readonly Quantity[]): void {
  const { marks } = text;
  quantities.forEach((quantity, index) => {
    const { noun, said, killed } = quantity;
    if (!noun || said?.kind !== 'nutrient' || killed !== null || noun.from < quantity.from) return;
    const end = Math.max(noun.to, quantity.end);
    const back = takenBack(text, end, noun.nutrient);
    if (back === null) return;
    let at = back;
    while (at < back + BEHIND && !marks.at('noun', at)) {
      const link = marks.at('joiner', at) ?? marks.at('filler', at) ?? marks.at('asWord', at);
      if (!link) return;
      at = link.to;
    }
    const stands = marks.at('noun', at);
    if (!stands || stands.role.nutrient === noun.nutrient || stands.role.unit !== noun.unit) return;
    const next = quantities[index + 1];
    // '… not fat, protein, thirty one grams of protein' says the number once more.
    const again = next && next.begin - stands.to <= BEHIND && next.low === quantity.low;
    if (again && next.noun?.nutrient === stands.role.nutrient) quantity.killed = 'taken back';
    if (next?.noun?.from === at || quantity.killed !== null) return;
    if (!endsThere(text, stands.to)) return;
    quantity.noun = { ...stands.role, from: at, to: stands.to };
    quantity.said = { ...said, nutrient: stands.role.nutrient };
    quantity.corrected = true;
  });
}

/** Token behind the words that take a nutrient back: 'sorry', 'no,', 'not fat,'; null where none do. */
function takenBack(
  { marks, tokens }: Text,
  end: number,
  nutrient: NonNullable<Quantity['noun']>['nutrient'],
): number | null {
  for (let at = end; at <= end + REACH; at += 1) {
    const not = marks.at('not', at);
    const denied = not && marks.at('noun', not.to);
    if (denied?.role.nutrient === nutrient) return denied.to;
    const mark = marks.at('correct', at);
    // 'no protein' denies; 'no, protein' corrects.
    const comma = /^[,.]$/.test(tokens[mark?.to ?? -1]?.text ?? '');
    if (mark && mark.role.how !== 'heading')
      return mark.role.how === 'strong' || comma ? mark.to : null;
    if (!/^[,.–—-]$/.test(tokens[at]?.text ?? '')) return null;
  }
  return null;
}

function endsThere({ marks, tokens, language }: Text, to: number): boolean {
  const token = tokens[to];
  if (token === undefined || token.kind === 'line' || /^[.,;!)]$/.test(token.text)) {
    const next = tokens[to + 1];
    return next?.kind !== 'number' && !language.numbers.cardinals.has(next?.folded ?? '');
  }
  if (marks.at('copula', to) ?? marks.at('at', to)) return false;
  return (['so', 'joiner', 'scope', 'small'] as const).some((cat) => marks.at(cat, to));
}
