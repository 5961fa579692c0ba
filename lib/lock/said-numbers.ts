import type { NumberScope, SpokenNumber } from '#lib/figures/published-numbers';
import type { SayLine, SayNumber } from '#lib/figures/say-line';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { printCount, roundTo, settled } from '#lib/units/print';

/** A line that was said at the take: its numbers are locked there and then. */
export interface SaidLine {
  readonly scope: SaidScope;
  readonly numbers: readonly SayNumber[];
}

export type SaidScope =
  | { readonly kind: 'day' }
  | { readonly kind: 'whole' | 'half' | 'soFar'; readonly segmentId: string }
  | { readonly kind: 'portion'; readonly segmentId: string; readonly portionId: string };

/**
 * The numbers of lines that were said, as the tally takes them: fixed first. What was said as 'about' or 'at least'
 * fixes no whole number, and half of a dish is none of the tally's.
 * @param upTo where only the dishes up to one are tallied, its segment: what was said of the day so far is then the
 * day's number
 */
export function spokenNumbers(
  said: readonly SaidLine[],
  upTo: string | null = null,
): SpokenNumber[] {
  return said.flatMap(({ scope, numbers }) => {
    const of = tallied(scope, upTo);
    if (of === null) return [];
    return numbers
      .filter(({ hedge }) => hedge === 'exact')
      .map(({ nutrient, amount }) => ({ nutrient, scope: of, amount }));
  });
}

function tallied(scope: SaidScope, upTo: string | null): NumberScope | null {
  switch (scope.kind) {
    case 'day':
      return upTo === null ? { kind: 'day' } : null;
    case 'soFar':
      return scope.segmentId === upTo ? { kind: 'day' } : null;
    case 'whole':
      return { kind: 'whole', segmentId: scope.segmentId };
    case 'portion':
      return { kind: 'portion', portionId: scope.portionId };
    case 'half':
      return null;
  }
}

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
 * What was said covers (MODEL, D.1) half a unit about a number said as it stands, five about one of 100 or more that
 * ends in 0, with 'about' 5 % and at least 5 kcal or 1 g; 'at least' and 'at most' all to their side.
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

function covers({ nutrient, amount, hedge }: SayNumber, now: SayNumber): boolean {
  // Without an upper bound only its own kind of words can cover it.
  if (now.value === null) return hedge === 'atLeast' && now.amount >= amount;
  switch (hedge) {
    case 'atLeast':
      return now.value >= amount;
    case 'atMost':
      return now.value <= amount;
    case 'about': {
      const least = nutrient === 'energyKcal' ? 5 : 1;
      return Math.abs(now.value - amount) <= Math.max(least, amount * 0.05);
    }
    case 'exact': {
      const half = amount >= 100 && amount % 10 === 0 ? 5 : 0.5;
      return settled(Math.abs(now.value - amount)) <= half;
    }
  }
}

const HEDGES = { exact: '', about: 'about ', atLeast: 'at least ', atMost: 'at most ' } as const;

function saidWords({ nutrient, amount, hedge }: SayNumber, region: 'US' | 'EU'): string {
  const unit =
    nutrient === 'protein' ? 'grams of protein' : region === 'US' ? 'calories' : 'kilocalories';
  return `${HEDGES[hedge]}${printCount(amount)} ${unit}`;
}

/** Whole units; a tenth where whole ones would read as what was said. */
function nowWords(said: SayNumber, { nutrient, amount, value, hedge }: SayNumber): string {
  if (value === null) return `${HEDGES[hedge]}${printCount(amount)}`;
  const whole = roundTo(value, 1);
  if (whole !== said.amount) return printCount(whole);
  return `${String(roundTo(value, 0.1))} ${NUTRIENTS[nutrient].unit}`;
}
