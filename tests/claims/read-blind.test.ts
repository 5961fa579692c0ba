import { expect, test } from 'vitest';
import { labelled } from './labelled';
import { report, score } from './score';

/** Below this the reading has become worse than when it was first measured. */
const FLOOR = 0.5;

/**
 * Texts that were written, with what they state, without sight of the grammar. Whoever changes the grammar looks at
 * none of them: they measure only as long as nobody does.
 */
test('statements of unseen texts are found and read right', () => {
  const scores = score(labelled('statements-blind.json').texts);
  console.info(report(scores));
  expect(scores.all.right / scores.all.read, 'precision').toBeGreaterThanOrEqual(FLOOR);
  expect(scores.all.found / scores.all.asked, 'recall').toBeGreaterThanOrEqual(FLOOR);
});
