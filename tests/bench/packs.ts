import { performance } from 'node:perf_hooks';
import { choosePacks, costOf, type PackOption, type PackWish } from '#lib/shopping/choose-packs';

/** `npm run bench -- packs`: a list of 60 foods with 6 packs each, beside every combination tried where that ends. */

const FOODS = 60;
const PACKS = 6;
const LIMIT_MS = 300;
/** Combinations tried one by one at most for a food; above it is left to the choice alone. */
const MOST_COMBINATIONS = 3_000_000;
const RUNS = 15;

/** A small generator of our own, so that every run and every machine has the same foods (Park and Miller, 1988). */
function numbers(seed: number): (low: number, high: number) => number {
  let state = seed;
  return (low, high) => {
    state = (state * 48_271) % 2_147_483_647;
    return low + (state % (high - low + 1));
  };
}

interface Case {
  readonly options: readonly PackOption[];
  readonly wish: PackWish;
}

/** Sizes as shops have them: round grams, whole ounces and what a piece happened to weigh; some loose, some offers. */
function madeFood(any: (low: number, high: number) => number): Case {
  const perKilo = any(150, 3000);
  const options = Array.from({ length: PACKS }, (_, at): PackOption => {
    const kind = any(0, 9);
    const bundle = kind === 8 ? any(2, 4) : 1;
    const one = [any(1, 20) * 50_000, Math.round(any(2, 32) * 28_349.523), any(80_000, 900_000)];
    const net = kind === 9 ? 1_000_000 : (one[any(0, 2)] ?? 0);
    const minor = Math.max(1, Math.round((net * bundle * perKilo * any(70, 130)) / 100_000_000));
    return {
      id: `pack-${at}`,
      holds: kind === 9 ? 50_000 : net * bundle,
      packs: kind === 9 ? 0 : bundle,
      minor,
      priceFor: net * bundle,
      most: kind === 8 ? any(1, 3) : null,
    };
  });
  const laterUse = any(0, 2) === 0 ? any(50, 800) * 1000 : 0;
  return { options, wish: { need: any(60, 2500) * 1000, laterUse } };
}

const timesAtMost = ({ need }: PackWish, { holds, most }: PackOption) =>
  Math.min(Math.ceil(need / holds), most ?? Infinity);

/** The least net cost, by trying every combination; null where they are too many. */
function everyCombination({ options, wish }: Case): number | null {
  const all = options.reduce((product, of) => product * (timesAtMost(wish, of) + 1), 1);
  if (all > MOST_COMBINATIONS) return null;
  const cheapest = options.reduce((a, b) =>
    (b.minor ?? 0) * a.priceFor < (a.minor ?? 0) * b.priceFor ? b : a,
  );
  let best = Infinity;
  const walk = (at: number, total: number, cost: number) => {
    const option = options[at];
    if (!option) {
      if (total < wish.need) return;
      const keeps = Math.min(total - wish.need, wish.laterUse);
      best = Math.min(best, cost - Math.floor((keeps * (cheapest.minor ?? 0)) / cheapest.priceFor));
      return;
    }
    for (let times = timesAtMost(wish, option); times >= 0; times--) {
      walk(at + 1, total + option.holds * times, cost + costOf(option, times));
    }
  };
  walk(0, 0, 0);
  return best;
}

export async function run(): Promise<void> {
  const any = numbers(20_261_129);
  const foods = Array.from({ length: FOODS }, () => madeFood(any));
  const choose = () => foods.map(({ options, wish }) => choosePacks(options, wish));
  const took = Array.from({ length: RUNS }, () => {
    const from = performance.now();
    choose();
    return performance.now() - from;
  });
  const [first = 0] = took;
  const sorted = [...took].sort((a, b) => a - b);
  const median = sorted[Math.floor(RUNS / 2)] ?? 0;
  const choices = choose();
  const unproven = choices.filter((choice) => choice !== null && !choice.proven).length;
  let [tried, wrong] = [0, 0];
  let ours = 0;
  const began = performance.now();
  const indices = foods.flatMap((food, at) => {
    const net = everyCombination(food);
    if (net === null) return [];
    tried += 1;
    const choice = choices[at];
    if (!choice || (choice.minor ?? 0) - choice.credit !== net) wrong += 1;
    return [at];
  });
  const exhaustiveMs = performance.now() - began;
  const from = performance.now();
  for (const at of indices) {
    const food = foods[at];
    if (food) choosePacks(food.options, food.wish);
  }
  ours = performance.now() - from;
  console.log(`${FOODS} foods with ${PACKS} packs each:`);
  console.log(
    `  first time ${first.toFixed(1)} ms, then ${median.toFixed(1)} ms (median of ${RUNS})`,
  );
  console.log(`  not proven: ${unproven}`);
  console.log(
    `${tried} of them, every combination tried: ${exhaustiveMs.toFixed(0)} ms beside ${ours.toFixed(1)} ms; dearer or wrong: ${wrong}`,
  );
  if (first > LIMIT_MS || wrong > 0 || unproven > 0) {
    console.error(`Over ${LIMIT_MS} ms, not proven, or wrong.`);
    process.exitCode = 1;
  }
}
