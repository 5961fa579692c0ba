import type { Kitchen } from '#lib/episode/kitchen-schema';
import type { Chance } from './seeded';
import { UNSAID_KITCHEN, UNSAID_OVEN } from '#lib/episode/unsaid';

/** Temperatures that a day may use; one is 350 °F. */
export const MILLI_CS = [
  120_000, 150_000, 160_000, 175_000, 176_667, 180_000, 190_000, 200_000, 220_000, 230_000,
];

/** A kitchen of one or two ovens, some of whose changes of temperature are measured. */
export function randomKitchen(chance: Chance, milliCs: readonly number[]): Kitchen {
  const ovens = Array.from({ length: chance.int(1, 2) }, (_, i) => {
    const coldMilliC = chance.int(16, 26) * 1000;
    const all = [coldMilliC, ...milliCs];
    const pairs = all.flatMap((a) => milliCs.flatMap((b) => (a === b ? [] : [[a, b] as const])));
    return {
      id: `oven-${i + 1}`,
      name: `Oven ${i + 1}`,
      racks: chance.int(1, 3),
      coldMilliC,
      ...UNSAID_OVEN,
      changes: pairs
        .filter(() => chance.percent(40))
        .map(([fromMilliC, toMilliC], n) => {
          return { id: `oven-${i + 1}-${n}`, fromMilliC, toMilliC, seconds: chance.int(90, 1500) };
        }),
      heatSPerC: chance.int(2, 6),
      coolSPerC: chance.int(3, 10),
    };
  });
  return {
    ...UNSAID_KITCHEN,
    id: 'kitchen',
    name: 'Kitchen',
    zone: 'Europe/Copenhagen',
    lat: null,
    lon: null,
    burners: chance.int(1, 4),
    ovens,
    scales: [],
    spreads: [],
  };
}
