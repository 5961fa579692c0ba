import { describe, expect, test } from 'vitest';
import { labelled } from './labelled';
import { report, score, wilson } from './score';

/** The texts that the grammar was written with: what is counted here it has seen. */
describe.each(['statements-open.json', 'statements-open-2.json'])('%s', (name) => {
  const scores = score(labelled(name).texts);

  test('statements are read right and found in the texts that the grammar was written with', () => {
    const { all, failures } = scores;
    console.info([name, report(scores), ...failures].join('\n'));
    expect(all.right / all.read, 'precision').toBeGreaterThanOrEqual(0.97);
    expect(all.found / all.asked, 'recall').toBeGreaterThanOrEqual(0.95);
  });

  test('every kind is read', () => {
    for (const [kind, { asked, found }] of scores.byKind) {
      expect(found / asked, kind).toBeGreaterThanOrEqual(0.85);
    }
  });
});

// Brown, Cai, DasGupta, Statistical Science 16 (2001), 101-133, give the formula; the values are worked out by hand.
test('the interval of a share is that of Wilson', () => {
  const [low, high] = wilson(1, 1);
  expect(low).toBeCloseTo(1 / (1 + 1.959964 ** 2), 6);
  expect(high).toBeCloseTo(1, 9);
  const [below, above] = wilson(50, 100);
  expect(below).toBeCloseTo(0.40383, 4);
  expect(above).toBeCloseTo(0.59617, 4);
  expect(wilson(0, 0)).toEqual([0, 1]);
});
