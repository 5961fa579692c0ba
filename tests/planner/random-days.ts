import type { ExactProblem } from '#lib/planner/exact/problem';
import { seededRandom } from '#lib/planner/seeded-random';
import { startsOnlyProblem, wrapOf } from '#lib/planner/read-starts';

/**
 * A made-up filming day of about so many tasks: segments of work in order, most of it by hand and some before
 * the camera, bakes that run by themselves and must follow within a while, an oven that changes over between
 * bakes, burners and a counter. Equal seed, equal day.
 */
export function randomDay(size: number, seed: number): ExactProblem {
  const random = seededRandom(seed * 1000 + size);
  const within = (from: number, to: number): number =>
    from + Math.floor(random() * (to - from + 1));
  const lengths = [0];
  // Hands, camera, burners, counter, cooling racks.
  const capacities = [1, 1, 4, 3, 2];
  const demands: number[][] = capacities.map(() => [0]);
  const lags: [number, number, number][] = [];
  const bakes: { task: number; heat: number }[] = [];
  const task = (length: number, units: readonly number[]): number => {
    lengths.push(length);
    demands.forEach((row, resource) => row.push(units[resource] ?? 0));
    return lengths.length - 1;
  };
  const last: number[] = [];
  while (lengths.length < size) {
    let before = 0;
    const steps = Math.min(within(5, 12), Math.max(3, size - lengths.length));
    for (let step = 0; step < steps; step += 1) {
      const kind = random();
      let now: number;
      if (kind < 0.68) {
        const onCamera = random() < 0.45 ? 1 : 0;
        now = task(within(3, 16), [1, onCamera, random() < 0.15 ? 1 : 0, 1, 0]);
        lags.push([before, now, lengths[before] ?? 0]);
      } else if (kind < 0.86) {
        now = task(within(12, 42), [0, 0, 0, 0, 0]);
        bakes.push({ task: now, heat: within(0, 2) });
        lags.push([before, now, lengths[before] ?? 0]);
        // What comes out is taken within a while.
        const out = task(within(4, 12), [1, 0, 0, 1, 0]);
        lags.push(
          [now, out, lengths[now] ?? 0],
          [out, now, -((lengths[now] ?? 0) + within(8, 25))],
        );
        now = out;
      } else {
        now = task(within(10, 36), [0, 0, 0, 0, 1]);
        lags.push([before, now, lengths[before] ?? 0]);
        if (before > 0) lags.push([now, before, -((lengths[before] ?? 0) + within(10, 30))]);
      }
      before = now;
    }
    last.push(before);
  }
  const end = task(0, []);
  for (const one of last) lags.push([one, end, lengths[one] ?? 0]);
  const change = (from: number, to: number): number => (from === to ? 2 : 4 + Math.abs(from - to));
  const setups = bakes.flatMap((first, index) =>
    bakes
      .slice(index + 1)
      .map(
        (second) =>
          [
            first.task,
            second.task,
            change(first.heat, second.heat),
            change(second.heat, first.heat),
          ] as const,
      ),
  );
  const horizon = lengths.reduce((sum, length) => sum + length + 8, 0);
  return startsOnlyProblem({
    lengths,
    capacities,
    demands,
    lags,
    setups,
    horizon,
    goal: wrapOf(end),
  });
}
