import { MEASURE_KINDS, type Kitchen } from '#lib/episode/kitchen-schema';
import { DEFAULT_RESOLUTION_MG, DEFAULT_SPREAD_PERMILLE } from '#lib/episode/spreads';
import { UNSAID_KITCHEN, UNSAID_OVEN } from '#lib/episode/unsaid';

/**
 * What is taken for granted until a person has said how the kitchen is: one oven with two racks, four
 * burners, a scale that shows whole grams. Times and spreads: common practice, no source; all editable.
 */
export const DEFAULT_KITCHEN: Kitchen = {
  ...UNSAID_KITCHEN,
  id: '00000000-0000-7000-8000-000000000010',
  name: 'My kitchen',
  zone: 'UTC',
  lat: null,
  lon: null,
  burners: 4,
  ovens: [
    {
      id: '00000000-0000-7000-8000-000000000011',
      name: 'Oven',
      racks: 2,
      ...UNSAID_OVEN,
      coldMilliC: 20_000,
      changes: [],
      heatSPerC: 4,
      coolSPerC: 12,
    },
  ],
  scales: [
    {
      id: '00000000-0000-7000-8000-000000000012',
      name: 'Kitchen scale',
      resolutionMg: DEFAULT_RESOLUTION_MG,
      accuracyPpm: 1000,
    },
  ],
  spreads: MEASURE_KINDS.map((kind, index) => ({
    id: `00000000-0000-7000-8000-0000000000${13 + index}`,
    kind,
    permille: DEFAULT_SPREAD_PERMILLE[kind],
  })),
};
