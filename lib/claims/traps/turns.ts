import type { Quantity } from '../numbers/quantity';
import { indexAt } from '../words/at-or-behind';
import type { Text } from '../words/text';

/** Numbers of the turn before that another may correct; and words before the number that does. */
const LAST = 2;
const FIRST = 5;
/** Within which factor the number of somebody who knows better is. */
const NEAR = 2.5;

/** Tokens with which another one begins to speak: '- Forty.', '>> Forty.' on a line of its own. */
function turnsOf({ text, tokens, spoken }: Text): number[] {
  if (!spoken) return [];
  return tokens.flatMap(({ text: mark, start }, at) => {
    const first = start === 0 || text[start - 1] === '\n';
    return first && /^[-–—>]$/.test(mark) ? [mark === '>' ? at + 2 : at + 1] : [];
  });
}

/**
 * Who answers a number with another one takes it back: '- Bake it at a hundred and eighty. - Two hundred.' The number
 * that is said last counts what the first one did.
 */
export function correctTurns(text: Text, quantities: readonly Quantity[]): void {
  const turns = turnsOf(text);
  if (turns.length < 2) return;
  for (let turn = 1; turn < turns.length; turn += 1) {
    const begin = turns[turn] ?? 0;
    const index = indexAt(quantities, begin);
    const answer = quantities[index];
    if (!answer || answer.begin - begin > FIRST || !isAlone(text, begin, answer)) continue;
    const before = quantities
      .slice(Math.max(0, index - LAST), index)
      .filter(({ begin: at }) => at >= (turns[turn - 1] ?? 0))
      .reverse();
    const taken = before.find((one) => one.killed === null && isSameKind(one, answer));
    if (!taken || taken.low === answer.low) continue;
    taken.killed = 'taken back';
    answer.corrected = true;
    answer.noun ??= taken.noun;
    answer.said ??= taken.said;
  }
}

/** Whether nothing but small words stand before a number in its turn. */
function isAlone({ marks, tokens }: Text, from: number, { begin }: Quantity): boolean {
  for (let at = from; at < begin; at += 1) {
    const small = [
      'small',
      'filler',
      'hedge',
      'copula',
      'so',
      'joiner',
      'correct',
      'lead',
    ] as const;
    const known = small.some(
      (category) => marks.at(category, at) ?? marks.before(category, at + 1),
    );
    if (!known && !/^[.,]$/.test(tokens[at]?.text ?? '')) return false;
  }
  return true;
}

/** Whether a number counts what another one did, or nothing by its own words, and is near it. */
function isSameKind({ said, low }: Quantity, answer: Quantity): boolean {
  if (said === null || answer.low > low * NEAR || low > answer.low * NEAR) return false;
  if (answer.said !== null)
    return answer.said.kind === said.kind && answer.said.nutrient === said.nutrient;
  const { unit, noun } = answer;
  return noun === null && (unit === null || unit.unit === said.unit);
}
