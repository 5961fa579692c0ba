import type { Quantity } from '../numbers/quantity';
import type { Text } from '../words/text';

/** Degrees Celsius that an oven is set to. */
const OVEN = { least: 110, most: 260 } as const;
/** By how much °F may be off what °C come to, as ovens are marked in steps of 25 °F. */
const STEP = 15;
/** Tokens from the degrees of one scale to those of the other, and to the words for whom these are. */
const REACH = 30;
const NAMED = 8;

/**
 * Degrees of an oven that are said once more for those who have the other scale: 'I've got mine on one ninety, if
 * you're in the States it's three seventy five'. Two numbers that come to each other, one of which is an oven's by its
 * own words, or beside words for a scale or for those who use it.
 */
export function sayBothScales(text: Text, quantities: readonly Quantity[]): void {
  quantities.forEach((first, index) => {
    if (!mayBeDegrees(first)) return;
    for (let at = index + 1; at < quantities.length; at += 1) {
      const second = quantities[at];
      if (!second || second.begin - first.end > REACH) return;
      if (!mayBeDegrees(second) || !comesTo(first.low, second.low)) continue;
      const known = first.said ?? second.said;
      if (!isScaleNamed(text, known ? first.begin - NAMED : first.end, second.end + NAMED))
        continue;
      const [celsius, fahrenheit] = first.low < second.low ? [first, second] : [second, first];
      // '170 fan, that's 340 for the Americans': with its fan as well.
      const fan = known?.fan ? { fan: true as const } : {};
      celsius.said ??= { kind: 'ovenTemperature', unit: 'C', ...fan };
      if (fahrenheit.unit === null)
        fahrenheit.said = { kind: 'ovenTemperature', unit: 'F', ...fan };
      fahrenheit.said ??= { kind: 'ovenTemperature', unit: 'F' };
      return;
    }
  });
}

/** Whether a number may be degrees of an oven, or is. */
function mayBeDegrees({ said, killed, unit, noun, low, high }: Quantity): boolean {
  if (killed !== null || noun !== null || low !== high || low % 5 !== 0) return false;
  if (said !== null) return said.kind === 'ovenTemperature';
  return unit === null || unit.of === 'degree';
}

/** Whether the greater of two numbers is as many °F as the lesser is °C. */
function comesTo(one: number, other: number): boolean {
  const [celsius, fahrenheit] = [Math.min(one, other), Math.max(one, other)];
  if (celsius < OVEN.least || celsius > OVEN.most) return false;
  return Math.abs(fahrenheit - (celsius * 9) / 5 - 32) <= STEP;
}

function isScaleNamed({ marks }: Text, from: number, to: number): boolean {
  for (let at = Math.max(0, from); at < to; at += 1)
    if (marks.at('scale', at) || marks.at('unit', at)?.role.of === 'degree') return true;
  return false;
}
