import type { Quantity } from '../numbers/quantity';
import type { Scope } from '../statement';
import type { Text } from '../words/text';

/** Tokens from an amount to what each part gets of it. */
const REACH = 40;
/** Parts that a dish is shared between (common practice, no source), and by which share their amount may be rounded. */
const PARTS = { least: 2, most: 24 } as const;
const ROUNDED = 0.03;
const PART_SCOPES: ReadonlySet<Scope> = new Set(['portion', 'each', 'slice']);

/**
 * What each part gets of an amount that was said: 'mince, five hundred grams, split between the six peppers, so
 * eighty three grams each', 'six sausages between three plates, two each'. Read only where as many parts as were
 * counted come to the amount before.
 */
export function sayShared(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((quantity, index) => {
    const scope = partBehind(text, quantity);
    if (scope === null || !isOpenShare(quantity)) return;
    const parts = partsBefore(quantities, index);
    for (let at = index - 1; at >= 0; at -= 1) {
      const whole = quantities[at];
      if (!whole || quantity.begin - whole.end > REACH) return;
      const { said, killed } = whole;
      if (killed !== null || said?.kind !== 'amount' || said.food === undefined) continue;
      if (said.scope !== undefined && PART_SCOPES.has(said.scope)) continue;
      if (quantity.unit !== null && quantity.unit.unit !== said.unit) continue;
      const shared = parts.find(({ low }) => isShare(quantity.low, whole.low, low));
      if (!shared) continue;
      // 'six jars, two hundred each': of portions.
      const unit = scope === 'each' ? shared.said?.unit : undefined;
      const part = unit === 'portion' || unit === 'slice' ? unit : scope;
      quantity.said = { kind: 'amount', unit: said.unit, food: said.food, scope: part };
      return;
    }
  });
}

/** Whether a number says nothing yet but how much of something. */
function isOpenShare({ unit, noun, said, killed, low, high }: Quantity): boolean {
  if (killed !== null || noun !== null || low !== high) return false;
  if (unit !== null && unit.of !== 'mass' && unit.of !== 'volume') return false;
  return said === null || (said.kind === 'amount' && said.food === undefined);
}

/** The part that stands right behind a number: 'each', 'in each jar', 'a head'. */
function partBehind({ marks, tokens }: Text, { end }: Quantity): Scope | null {
  const led = tokens[end]?.text === ',' ? end + 1 : end;
  const part = marks.at('scope', led) ?? marks.at('scope', led + 1);
  if (!part) return null;
  if (part.role.link === 'counted') return 'each';
  return PART_SCOPES.has(part.role.scope) ? part.role.scope : null;
}

/** Numbers before one that may count the parts, the nearest first. */
function partsBefore(quantities: readonly Quantity[], index: number): Quantity[] {
  const here = quantities[index];
  const found: Quantity[] = [];
  for (let at = index - 1; at >= 0; at -= 1) {
    const one = quantities[at];
    if (!here || !one || here.begin - one.end > REACH) break;
    const counted = Number.isInteger(one.low) && one.low >= PARTS.least && one.low <= PARTS.most;
    if (counted && one.low === one.high && one.unit === null) found.push(one);
  }
  return found;
}

const isShare = (each: number, whole: number, count: number): boolean =>
  Math.abs(each * count - whole) <= Math.max(ROUNDED * whole, each < 10 ? 0 : 1);
