import type { SayLine, SayNumber } from '#lib/figures/say-line';
import { hedgeWord, saidSpan } from '#lib/figures/spoken-numbers';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { printCount, roundTo, settled } from '#lib/units/print';

/** How what was said stands against what it would be now. */
export interface SaidChange {
  /** `covered`: the number has changed, and what was said still covers it. `off`: it does not. */
  readonly kind: 'covered' | 'off';
  /** "you said 640 calories, it is now 655". */
  readonly words: string;
}

/**
 * What has changed under a line since it was said; null while every number of it is what it was.
 *
 * What was said covers is `saidSpan`.
 * @example saidChange([{ nutrient: 'energyKcal', amount: 640, hedge: 'exact', value: 640.2 }], lineNow, 'US')
 *   // { kind: 'off', words: 'You said 640 calories, it is now 655.' }
 */
export function saidChange(
  said: readonly SayNumber[],
  now: SayLine,
  region: 'US' | 'EU',
): SaidChange | null {
  if (!now.ready) {
    const words = `You said ${said.map((one) => saidWords(one, region)).join(' and ')}; now it can’t be said: ${now.why}.`;
    return { kind: 'off', words };
  }
  const changed = said.flatMap((one) => {
    const other = now.numbers.find(({ nutrient }) => nutrient === one.nutrient);
    if (other && isSame(one, other)) return [];
    return [{ one, other, covered: other !== undefined && covers(one, other) }];
  });
  if (changed.length === 0) return null;
  const off = changed.filter(({ covered }) => !covered);
  const told = off.length > 0 ? off : changed;
  const words = told.map(({ one, other }) => {
    const is = other ? nowWords(one, other) : 'open';
    return `you said ${saidWords(one, region)}, it is now ${is}`;
  });
  const all = words.join('; ');
  const sentence = all.charAt(0).toUpperCase() + all.slice(1);
  return off.length > 0
    ? { kind: 'off', words: `${sentence}.` }
    : { kind: 'covered', words: `${sentence}, which that still covers.` };
}

/** The same figure, but for the last digits of floating point. */
function isSame(said: SayNumber, now: SayNumber): boolean {
  if (said.value === null || now.value === null) {
    return said.value === now.value && said.amount === now.amount && said.hedge === now.hedge;
  }
  return settled(said.value) === settled(now.value);
}

function covers(said: SayNumber, now: SayNumber): boolean {
  // Without an upper bound only its own kind of words can cover it.
  if (now.value === null) return said.hedge === 'atLeast' && now.amount >= said.amount;
  const { low, high } = saidSpan(said);
  const value = settled(now.value);
  return settled(low) <= value && value <= settled(high);
}

function saidWords({ nutrient, amount, hedge }: SayNumber, region: 'US' | 'EU'): string {
  const unit =
    nutrient === 'protein' ? 'grams of protein' : region === 'US' ? 'calories' : 'kilocalories';
  return `${hedgeWord(hedge)}${printCount(amount)} ${unit}`;
}

/** Whole units; a tenth where whole ones would read as what was said. */
function nowWords(said: SayNumber, { nutrient, amount, value, hedge }: SayNumber): string {
  if (value === null) return `${hedgeWord(hedge)}${printCount(amount)}`;
  const whole = roundTo(value, 1);
  if (whole !== said.amount) return printCount(whole);
  return `${String(roundTo(value, 0.1))} ${NUTRIENTS[nutrient].unit}`;
}
