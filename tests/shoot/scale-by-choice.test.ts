import { describe, expect, it, test } from 'vitest';
import { doubtfulWeight } from '#lib/shoot/doubtful-weight';
import { anotherWay, nextHow, wayFor } from '#lib/shoot/next-on-scale';

/* How a kitchen scale is used, and what counts as far off: common practice, no source. */

test('after a weight was kept the next is weighed as it was chosen', () => {
  for (const way of ['direct', 'total', 'difference'] as const) {
    expect(nextHow({ way, containerMg: 0 }).way).toBe(way);
  }
  expect(nextHow({ way: 'direct', containerMg: 310_000 }).containerMg).toBe(310_000);
});

test('a container comes off what is weighed by itself, and not of another way', () => {
  const bowl = { way: 'direct', containerMg: 310_000 } as const;
  expect(anotherWay('total', bowl)).toEqual({ way: 'total', containerMg: 0 });
  expect(anotherWay('direct', bowl)).toEqual(bowl);
});

test('only an ingredient goes onto what is there', () => {
  expect(wayFor('finished', 'total')).toBe('direct');
  expect(wayFor('raw', 'total')).toBe('total');
  expect(wayFor('left', 'difference')).toBe('difference');
});

describe('a weight far from the plan is asked about before it is kept', () => {
  it.each([
    [450, 4520, '4520 g is 10 times the 450 g planned. Is a digit too many typed?'],
    [450, 45.2, '45.2 g is 1/10 of the 450 g planned. Is a digit too few typed?'],
    [200, 500, '500 g is 2.5 times the 200 g planned. Is it right?'],
    [200, 90, '90 g is 1/2.2 of the 200 g planned. Is it right?'],
    // Within twice and half of it nobody is asked.
    [200, 400, null],
    [200, 100, null],
    [200, 212, null],
    [0, 30, null],
  ])('%d g planned, %d g typed', (planned, typed, asked) => {
    expect(doubtfulWeight(planned * 1000, typed * 1000)).toBe(asked);
  });

  it('and not where nothing was planned', () => {
    expect(doubtfulWeight(null, 4_520_000)).toBeNull();
  });
});
