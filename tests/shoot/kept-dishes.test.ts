import { expect, it } from 'vitest';
import { daySheet } from '#lib/shoot/day-sheet';
import { planDay } from '#lib/shoot/plan-day';
import { dayFile, link, segment, step } from './made-day';

const on = (fate: 'kept' | 'eaten') => ({
  segments: [{ id: 'on', segmentId: 'a', pickup: false, part: 'all' as const, fate }],
});
const steps = [
  step('chop', { hands: true }),
  step('bake', { usualS: 1800, racks: 1, oven: { ovenId: null, milliC: 200_000 } }),
  step('simmer', { usualS: 600, burners: 1 }),
  step('portion', { hands: true }),
];
const links = [
  link('chop', 'bake', 0, null),
  link('bake', 'simmer', 0, null),
  link('simmer', 'portion', 0, null),
];
const remarksOf = (fate: 'kept' | 'eaten') => {
  const file = dayFile([segment('a', steps)], links, on(fate));
  return daySheet(file, planDay(file, { seed: 1 })).rows.flatMap(({ entry, remarks }) =>
    remarks.map((remark) => `${entry.title}: ${remark}`),
  );
};

// FDA Food Code 2022, 3-501.14(A): 57 to 21 °C within 2 hours, and to 5 °C within 6 hours in all.
it('a kept dish says at its last heat by when it must have cooled', () => {
  // Heating by 09:18, bake until 09:48, simmer until 09:58.
  expect(remarksOf('kept')).toEqual([
    'Step simmer: is kept: cool it to 21 °C by 11:58 and to 5 °C by 15:58 (FDA Food Code, 3-501.14(A))',
  ]);
});

it('a dish that is eaten says nothing', () => {
  expect(remarksOf('eaten')).toEqual([]);
});
