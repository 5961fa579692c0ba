import type { FoodVersion } from '#lib/foods/food';
import { amountRange } from '#lib/foods/label-column';
import { servingInterval } from '#lib/foods/label-rounding';
import type { Problem } from '#lib/result';
import { scaled, times, type Interval } from '#lib/units/interval';

/** What a pack says that it holds; null where it does not say. */
export interface PackAmounts {
  readonly netMg: number | null;
  readonly netMl: number | null;
  readonly drainedMg: number | null;
}

/** What a pack holds may differ from what is printed on it by this share (common practice, no source). */
const FILL = 0.02;

/**
 * Servings in a pack times the serving must allow the pack's net weight (or its drained weight, or volume).
 * US panels round servings to the nearest half between 2 and 5, else to whole ones: 21 CFR 101.9(b)(8) (from
 * memory, section number given); elsewhere they stand for half a unit either way. Nothing is said where one of
 * the three is not known.
 * @example 8 servings of 30 g in a pack of 454 g: at most 259.25 g → `servings-not-pack`
 */
export function checkServings(version: FoodVersion, pack: PackAmounts): Problem[] {
  const { serving, rule } = version;
  if (!serving || serving.perPack === null) return [];
  const count = servingsInterval(rule, serving.perPack);
  const mass = servingInterval(version);
  const grams = mass && scaled(times(count, mass), 1e-3);
  const held = [pack.netMg, pack.drainedMg].filter((mg) => mg !== null).map((mg) => mg / 1000);
  if (grams && held.length > 0) {
    return held.some((g) => fits(grams, g)) ? [] : [problem(grams, held[0] ?? 0, 'g')];
  }
  if (serving.volumeMl === null || pack.netMl === null) return [];
  const half = 0.5 / 10 ** serving.decimals;
  const volume = serving.volumeMl;
  const millilitres = times(count, { low: volume - half, value: volume, high: volume + half });
  return fits(millilitres, pack.netMl) ? [] : [problem(millilitres, pack.netMl, 'ml')];
}

function servingsInterval(rule: FoodVersion['rule'], printed: number): Interval {
  const half = rule === 'us' && printed >= 2 && printed <= 5 ? 0.25 : 0.5;
  return { low: Math.max(0, printed - half), value: printed, high: printed + half };
}

const fits = ({ low, high }: Interval, amount: number) =>
  amount >= low * (1 - FILL) && amount <= high * (1 + FILL);

function problem(all: Interval, holds: number, unit: string): Problem {
  return {
    path: 'serving.perPack',
    code: 'servings-not-pack',
    message: `The servings make ${amountRange(all, unit)} together, but the pack holds ${holds} ${unit}. One of serving, servings and pack was misread.`,
    facts: { low: all.low, high: all.high, holds, unit },
  };
}

/** `checkServings` where a food comes in several packs: one that fits is enough. */
export function checkServingsInPacks(
  version: FoodVersion,
  packs: readonly PackAmounts[],
): Problem[] {
  const each = packs.map((pack) => checkServings(version, pack));
  return each.every((problems) => problems.length > 0) ? (each[0] ?? []) : [];
}
