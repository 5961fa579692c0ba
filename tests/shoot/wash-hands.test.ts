import { expect, test } from 'vitest';
import { daySheet } from '#lib/shoot/day-sheet';
import { planDay } from '#lib/shoot/plan-day';
import { dayFile, link, segment, step } from './made-day';

const remarksOf = (steps: Parameters<typeof segment>[1], links = [link('raw', 'next', 0, 0)]) => {
  const file = dayFile([segment('a', steps)], links);
  const plan = planDay(file, { seed: 1 });
  expect(plan.status).toBe('feasible');
  return daySheet(file, plan).rows.flatMap(({ entry, remarks }) =>
    remarks.map((remark) => `${entry.title}: ${remark}`),
  );
};
const raw = step('raw', { hands: true, contact: 'rawAnimal' });

// REFERENCES 5.5 and FDA Food Code 2022, 2-301.14: hands are washed between tasks; a clean-down is asked for only
// before food that is eaten as it is.
test('hand work that comes between raw work and its clean-down says to wash the hands first', () => {
  expect(remarksOf([raw, step('next', { hands: true })])).toEqual([
    'Step next: wash your hands first: until 09:10 they touched raw food (Step raw), and the clean-down is later (FDA Food Code, 2-301.14)',
  ]);
});

test('only the first does; raw work, and what runs by itself, do not', () => {
  const after = step('later', { hands: true });
  const links = [link('raw', 'next', 0, 0), link('next', 'later', 0, 0)];
  expect(remarksOf([raw, step('next', { hands: true }), after], links)).toHaveLength(1);
  expect(remarksOf([raw, step('next', { hands: true, contact: 'rawAnimal' })])).toEqual([]);
  expect(remarksOf([raw, step('next')])).toEqual([]);
});

test('after the clean-down nothing is said', () => {
  const ready = step('next', { hands: true, contact: 'readyToEat' });
  expect(remarksOf([raw, ready], [link('raw', 'next', 0, null)])).toEqual([]);
  expect(remarksOf([step('raw', { hands: true }), step('next', { hands: true })])).toEqual([]);
});
