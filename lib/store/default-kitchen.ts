import type { Kitchen } from '#lib/episode/schema';

/**
 * What is taken for granted until a person has said how the kitchen is: one oven with two racks, four
 * burners, a scale that shows whole grams. Times and spreads: common practice, no source; all editable.
 */
export const DEFAULT_KITCHEN: Kitchen = {
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
      resolutionMg: 1000,
      accuracyPpm: 1000,
    },
  ],
  spreads: [
    { id: '00000000-0000-7000-8000-000000000013', kind: 'spoon', permille: 150 },
    { id: '00000000-0000-7000-8000-000000000014', kind: 'cup', permille: 100 },
    { id: '00000000-0000-7000-8000-000000000015', kind: 'piece', permille: 200 },
    { id: '00000000-0000-7000-8000-000000000016', kind: 'slice', permille: 200 },
    { id: '00000000-0000-7000-8000-000000000017', kind: 'handful', permille: 300 },
  ],
};
