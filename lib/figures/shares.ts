import type { Dish } from '#lib/episode/context';
import type { FinishedWeight } from '#lib/episode/finished-weight';
import { byEyeShare } from '#lib/episode/made-from';
import type { Portion } from '#lib/episode/recipe-schema';
import { shareByMass, withoutDivisor } from '#lib/figures/finished-weight';
import { multiplyParts, scaleParts, type Parts } from '#lib/figures/parts';
import { divideBySource, source, type Sources, type Term } from '#lib/units/sum-of-products';

/** A part of a dish as a function of all of it. */
export interface Share {
  readonly share: (whole: Parts) => Parts;
  /** Sources that are errors of the share alone and of no ingredient. */
  readonly own: readonly string[];
}

/** Shares that are kept so that what is known of them is found again; beyond this many they are forgotten. */
const MOST = 256;
const exactShares = new Map<number, Share>();

/** An exact number of times the dish. */
function exact(of: number): Share {
  const known = exactShares.get(of);
  if (known) return known;
  if (exactShares.size >= MOST) exactShares.clear();
  const share: Share = { share: (whole) => scaleParts(whole, of), own: [] };
  exactShares.set(of, share);
  return share;
}

const massShares = new WeakMap<FinishedWeight, Map<number, Share>>();

/** So many milligrams of the finished dish; open where it was not weighed and no change of weight is cited. */
export function massShare(dish: Dish, finished: FinishedWeight | null, massMg: number): Share {
  if (!finished) return { share: () => withoutDivisor(dish.recipe), own: [] };
  const byMass = massShares.get(finished) ?? new Map<number, Share>();
  massShares.set(finished, byMass);
  const known = byMass.get(massMg);
  if (known) return known;
  if (byMass.size >= MOST) byMass.clear();
  const share: Share = {
    share: (whole) => shareByMass(whole, finished, massMg),
    own: [finished.ownId],
  };
  byMass.set(massMg, share);
  return share;
}

/**
 * A portion: one of so many exactly, so many grams of the finished dish, or a share by eye with its spread.
 * @example portionShare(dish, { kind: 'count', of: 4, … }, null).share(whole) // a quarter
 */
export function portionShare(dish: Dish, portion: Portion, finished: FinishedWeight | null): Share {
  if (portion.kind === 'count') return exact(1 / portion.of);
  if (portion.kind === 'mass') return massShare(dish, finished, portion.massMg);
  return byEye(`portion:${portion.id}`, portion.share, portion.permille);
}

/** The part that was eaten: as a share, by eye, or as grams of the finished dish. */
export function eatenShare(dish: Dish, finished: FinishedWeight | null): Share {
  const { ate, eaten, id } = dish;
  if (ate.kind === 'share') return exact(eaten.num / eaten.den);
  if (ate.kind === 'byEye') return byEye(`ate:${id}`, eaten, ate.permille);
  if (!finished) return massShare(dish, null, ate.valueMg);
  const ateId = `ate:${id}`;
  const mass = { low: ate.lowMg, value: ate.valueMg, high: ate.highMg };
  const sources: Sources = new Map([...finished.sources, [ateId, mass] as const]);
  let factor: readonly Term[] = [source(ateId)];
  for (const each of finished.ids) factor = divideBySource(factor, each);
  return { share: (whole) => multiplyParts(whole, factor, sources), own: [ateId, finished.ownId] };
}

function byEye(id: string, of: { num: number; den: number }, permille: number): Share {
  if (of.num === 0) return exact(0);
  const sources = new Map([[id, byEyeShare(of, permille)]]);
  return { share: (whole) => multiplyParts(whole, [source(id)], sources), own: [id] };
}
