import { failed, ok, type Result } from '#lib/result';
import { scaleGramsText } from '#lib/units/scale-grams';

/** What is on the scale: an ingredient as its line says, cooked, what is left of it, or the finished dish. */
export type WeighedOf = 'raw' | 'cooked' | 'left' | 'finished';

/** Straight off the scale; before and after something was taken; or on top of what is on the scale already. */
export type WeighingWay = 'direct' | 'difference' | 'total';

/** What was typed off a scale, in milligrams. */
export interface TypedWeighing {
  readonly of: WeighedOf;
  readonly way: WeighingWay;
  /** What the scale shows now. */
  readonly nowMg: number;
  /** Straight: the container that comes off; 0 for none. */
  readonly containerMg: number;
  /** By difference: what the scale shows the other time, where that was typed along; null where not. */
  readonly otherMg: number | null;
  /** By difference, the reading that waits for this one; in a running total, what was on the scale. Null for none. */
  readonly beforeMg: number | null;
}

/** A reading to be kept: of something, or of a container that waits for its second reading. */
export interface ReadWeighing {
  readonly waits: boolean;
  readonly grossMg: number;
  readonly tareMg: number;
  readonly method: 'direct' | 'difference';
}

/**
 * The reading that was meant. What is taken out of a jar weighs before less after; what is left in a pan, and a
 * finished dish, weigh full less empty. Something must have been weighed: a container alone is no reading, and
 * less than it a mistake.
 * @returns problems at the fields `gross` (now), `tare` (container) or `after` (the other time)
 * @example a jar of 410 g, then 252 g: 158 g taken, by difference
 */
export function readWeighing(typed: TypedWeighing): Result<ReadWeighing> {
  const { way, nowMg, beforeMg } = typed;
  if (nowMg === 0 && !(way === 'difference' && beforeMg !== null)) {
    return fault('gross', 'The scale shows more than 0 g where something stands on it.');
  }
  if (way === 'total') return onTop(nowMg, beforeMg);
  if (way === 'difference') return difference(typed);
  const { containerMg } = typed;
  if (nowMg <= containerMg) {
    const words = `${grams(containerMg)} to take off leaves nothing: the scale showed ${grams(nowMg)}.`;
    return fault('tare', words);
  }
  return reading(nowMg, containerMg, 'direct');
}

function onTop(nowMg: number, beforeMg: number | null): Result<ReadWeighing> {
  if (beforeMg === null) {
    const words =
      'Nothing is on the scale yet: weigh this one straight, the next ones on top of it.';
    return fault('gross', words);
  }
  if (nowMg > beforeMg) return reading(nowMg, beforeMg, 'direct');
  const words = `${grams(beforeMg)} were on the scale before: with more on it, it shows more than that.`;
  return fault('gross', words);
}

function difference({ of, nowMg, otherMg, beforeMg }: TypedWeighing): Result<ReadWeighing> {
  const taken = of === 'raw' || of === 'cooked';
  // The one that was read first, where there are two.
  const first = beforeMg ?? (taken ? nowMg : otherMg);
  const second = beforeMg === null ? (taken ? otherMg : nowMg) : nowMg;
  if (first === null || second === null) {
    return ok({ waits: true, grossMg: nowMg, tareMg: 0, method: 'direct' });
  }
  const [grossMg, tareMg] = taken ? [first, second] : [second, first];
  if (grossMg > tareMg) return reading(grossMg, tareMg, 'difference');
  const words = taken
    ? `${grams(second)} after is no less than ${grams(first)} before: nothing was taken.`
    : `${grams(second)} is no more than ${grams(first)} empty: nothing is in it.`;
  return fault(beforeMg === null && taken ? 'after' : 'gross', words);
}

/**
 * What a reading adds, in a few words, while it is typed; null where that cannot be said yet.
 * @example weighingWords({ way: 'total', nowMg: 410_000, beforeMg: 252_000, … })
 *   // '410 g on the scale, 158 g more than before'
 */
export function weighingWords(typed: TypedWeighing): string | null {
  const read = readWeighing(typed);
  if (!read.ok) return null;
  const { waits, grossMg, tareMg, method } = read.value;
  if (waits) return `${grams(grossMg)}, kept until it is weighed again`;
  const net = grams(grossMg - tareMg);
  if (typed.way === 'total') return `${grams(grossMg)} on the scale, ${net} more than before`;
  if (method === 'difference') {
    const [full, empty] = [grams(grossMg), grams(tareMg)];
    const taken = typed.of === 'raw' || typed.of === 'cooked';
    return taken
      ? `${full} before, ${empty} after: ${net} taken`
      : `${full} full, ${empty} empty: ${net}`;
  }
  return tareMg === 0 ? net : `${grams(grossMg)} less ${grams(tareMg)}: ${net}`;
}

function reading(
  grossMg: number,
  tareMg: number,
  method: ReadWeighing['method'],
): Result<ReadWeighing> {
  return ok({ waits: false, grossMg, tareMg, method });
}

function fault(path: string, message: string): Result<never> {
  return failed({ path, code: 'nothing-weighed', message });
}

const grams = (mg: number) => `${scaleGramsText(mg)} g`;
