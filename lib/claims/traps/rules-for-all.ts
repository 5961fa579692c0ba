import { endWithNoun, type Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Tokens from a gram of something to what it has. */
const NEAR = 3;
/** Kilocalories of a gram of anything at most, and tokens in which such a rule goes on. */
const MOST_OF_GRAM = 9;
const GOES_ON = 6;

/** Marks the numbers of rules for everybody: 'a gram of fat has 9 calories', '9 calories per gram'. */
export function killRules(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    killGramFirst(text, quantity, quantities[index + 1]);
    killGramBehind(text, quantity, quantities[index + 1], quantities[index + 2]);
    killPerGram(text, quantity, quantities[index + 1]);
  });
}

/** 'a gram of fat has 9 calories'. */
function killGramFirst(text: Text, quantity: Quantity, next: Quantity | undefined): void {
  if (!next || !quantity.noun || quantity.unit?.of !== 'mass') return;
  if (quantity.low !== 1 || quantity.high !== 1) return;
  const behind = endWithNoun(quantity);
  if (text.marks.at('copula', behind) && next.begin - behind <= NEAR)
    quantity.killed = next.killed = 'rule';
}

/** 'fat has nine calories a gram, carbs have four'. */
function killGramBehind(
  text: Text,
  quantity: Quantity,
  next: Quantity | undefined,
  other: Quantity | undefined,
): void {
  const energy = text.marks.at('noun', quantity.end);
  const gram = next?.unit?.unit === 'g' && next.low === 1 && next.high === 1;
  if (!gram || energy?.role.nutrient !== 'energyKcal' || next.begin !== energy.to) return;
  quantity.killed = next.killed = 'rule';
  const bare = other?.unit === null && other.low <= MOST_OF_GRAM;
  if (bare && other.begin - next.end <= GOES_ON) other.killed = 'rule';
}

/** '9 calories per gram', 'for every ten calories'. */
function killPerGram(text: Text, quantity: Quantity, next: Quantity | undefined): void {
  const { noun } = quantity;
  const behind = endWithNoun(quantity);
  const per = noun ? text.marks.at('perUnit', behind) : undefined;
  const part = text.marks.at('scope', behind);
  if (!per || (part && part.to > per.to)) return;
  const every = next?.begin === per.to;
  if (every) next.killed = 'rule';
  if (every || noun?.nutrient === 'energyKcal' || text.marks.before('noun', per.to))
    quantity.killed = 'rule';
}
