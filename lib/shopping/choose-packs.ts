/**
 * Which packs to buy of one food: an exact choice over sizes, shops and offers. Amounts are whole numbers of one unit
 * (milligrams, or microlitres where a food is known by volume only), money whole minor units of one currency.
 */

/** One way of taking a food off the shelf, any number of times. */
export interface PackOption {
  /** Ties are broken by it. */
  readonly id: string;
  /** What one taking holds. */
  readonly holds: number;
  /** Packs in one taking: 3 for "three for 5.00"; 0 for loose goods, which are one bag however much is taken. */
  readonly packs: number;
  /** The price of `priceFor`, which is what one taking holds, or for loose goods any amount; null where unknown. */
  readonly minor: number | null;
  readonly priceFor: number;
  /** At most so many takings; null for any number. */
  readonly most: number | null;
}

export interface PackWish {
  /** What must be bought at least; more than 0. */
  readonly need: number;
  /** Of what is left over, so much keeps until a planned use that needs it. */
  readonly laterUse: number;
}

export interface PackChoice {
  /** How often each option is taken, in the order given. */
  readonly times: readonly number[];
  readonly total: number;
  readonly left: number;
  /** What of it keeps until a planned use. */
  readonly keeps: number;
  readonly packs: number;
  /** What is paid, and what of that the kept rest is worth; null where the options have no price. */
  readonly minor: number | null;
  readonly credit: number;
  /** False where the search was given up: the best that was found. */
  readonly proven: boolean;
}

/** Partial choices at most; far above what any shop's shelf comes to. */
const MOST_LABELS = 200_000;

interface Label {
  readonly total: number;
  readonly cost: number;
  readonly packs: number;
  readonly times: readonly number[];
}

/** What so many takings of an option cost, loose goods rounded up to a minor unit; 0 where it has no price. */
export function costOf({ minor, holds, priceFor }: PackOption, times: number): number {
  if (minor === null) return 0;
  return holds === priceFor ? minor * times : Math.ceil((minor * holds * times) / priceFor);
}

/**
 * The choice with the least net cost (price less what the kept rest is worth at the cheapest rate of the options),
 * then the least left over that will not keep, then the fewest packs, then the options' ids. Options all have a price,
 * or none has: then the least left over decides.
 *
 * A dynamic programme over what partial choices hold: of two that hold the same only the better is kept, and one is
 * dropped where another holds no less for less money. No pack is added to what is enough already, since it never
 * costs less than it is worth; a step of loose goods may, by rounding, so these come first, in every number.
 *
 * @returns null where all that may be taken is not enough
 * @example need 500 g, packs of 500 g at 2.00 and 1 kg at 3.00, nothing planned later: one of 500 g
 */
export function choosePacks(options: readonly PackOption[], wish: PackWish): PackChoice | null {
  const order = [...options.keys()].sort((a, b) => {
    const [of, other] = [options[a], options[b]];
    if (isLoose(of) !== isLoose(other)) return isLoose(of) ? -1 : 1;
    const [x, y] = [of?.id ?? '', other?.id ?? ''];
    return x < y ? -1 : x > y ? 1 : a - b;
  });
  const sorted = order.flatMap((at) => options[at] ?? []);
  const [cheapest] = [...sorted].sort((a, b) => rateOf(a) - rateOf(b));
  const worth = (left: number) => creditOf(cheapest, Math.min(left, wish.laterUse));
  const found = search(sorted, wish, worth);
  if (!found.best) return null;
  const { times, total, packs, cost } = found.best;
  const left = total - wish.need;
  const priced = sorted.every(({ minor }) => minor !== null);
  return {
    times: options.map((_, at) => times[order.indexOf(at)] ?? 0),
    total,
    left,
    keeps: Math.min(left, wish.laterUse),
    packs,
    minor: priced ? cost : null,
    credit: priced ? worth(left) : 0,
    proven: found.proven,
  };
}

/** What an amount is worth at the cheapest rate, in whole minor units, rounded down. */
function creditOf(cheapest: PackOption | undefined, amount: number): number {
  return cheapest ? Math.floor((amount * (cheapest.minor ?? 0)) / cheapest.priceFor) : 0;
}

function rateOf({ minor, priceFor }: PackOption): number {
  return (minor ?? 0) / priceFor;
}

function search(
  options: readonly PackOption[],
  { need, laterUse }: PackWish,
  worth: (left: number) => number,
): { readonly best: Label | null; readonly proven: boolean } {
  const rank = ({ total, cost, packs, times }: Label): Rank => {
    const left = total - need;
    return { net: cost - worth(left), waste: left - Math.min(left, laterUse), packs, times };
  };
  const mostWorth = worth(laterUse);
  let best: { readonly label: Label; readonly rank: Rank } | null = null;
  let labels: Label[] = [{ total: 0, cost: 0, packs: 0, times: [] }];
  let proven = true;
  for (const [at, option] of options.entries()) {
    const rest = options.slice(at + 1);
    const none = rest.map(() => 0);
    // What is still needed costs no less than at the cheapest rate that is left.
    const rate = Math.min(...rest.map(rateOf)) * (1 - 1e-12);
    const open = new Map<number, Label>();
    for (const label of labels) {
      const missing = Math.max(0, need - label.total);
      const enough = Math.ceil((isLoose(option) ? need : missing) / option.holds);
      const most = Math.min(enough, option.most ?? enough);
      for (let times = 0; times <= most; times++) {
        const next = taken(label, option, times);
        if (next.total >= need) {
          const ended = { ...next, times: [...next.times, ...none] };
          const of = rank(ended);
          if (best === null || isBetter(of, best.rank)) best = { label: ended, rank: of };
          if (!isLoose(rest[0])) continue;
        }
        if (rest.length === 0) continue;
        const least = next.cost + Math.max(0, need - next.total) * rate - mostWorth;
        if (best !== null && least > best.rank.net) continue;
        const same = open.get(next.total);
        if (!same || isBetterPart(next, same)) open.set(next.total, next);
      }
    }
    labels = undominated([...open.values()]);
    if (labels.length > MOST_LABELS) {
      labels = labels.slice(0, MOST_LABELS);
      proven = false;
    }
  }
  return { best: best?.label ?? null, proven };
}

const isLoose = (option: PackOption | undefined) => option?.packs === 0;

function taken(label: Label, option: PackOption, times: number): Label {
  const packs = option.packs === 0 ? (times > 0 ? 1 : 0) : option.packs * times;
  return {
    total: label.total + option.holds * times,
    cost: label.cost + costOf(option, times),
    packs: label.packs + packs,
    times: [...label.times, times],
  };
}

/** Without those for which another holds no less and costs less; the fullest first. */
function undominated(labels: Label[]): Label[] {
  labels.sort((a, b) => b.total - a.total);
  let cheapest = Infinity;
  return labels.filter(({ cost }) => {
    if (cost > cheapest) return false;
    cheapest = cost;
    return true;
  });
}

function isBetterPart(a: Label, b: Label): boolean {
  return a.cost !== b.cost
    ? a.cost < b.cost
    : a.packs !== b.packs
      ? a.packs < b.packs
      : isEarlier(a.times, b.times);
}

interface Rank {
  readonly net: number;
  readonly waste: number;
  readonly packs: number;
  readonly times: readonly number[];
}

function isBetter(a: Rank, b: Rank): boolean {
  if (a.net !== b.net) return a.net < b.net;
  if (a.waste !== b.waste) return a.waste < b.waste;
  return a.packs !== b.packs ? a.packs < b.packs : isEarlier(a.times, b.times);
}

/** Of equal choices the one that takes more of the earlier option. */
function isEarlier(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((times, index) => times !== b[index]);
  return at >= 0 && (a[at] ?? 0) > (b[at] ?? 0);
}
