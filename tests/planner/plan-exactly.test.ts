import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestOfAll } from './face-exhaustive';
import { planned, valuesOf } from './face-planned';
import { faceProblems, type FaceFeatures } from './face-random';

// [features, how many random problems]
const FEATURES: [string, FaceFeatures, number][] = [
  ['resources, lags and windows', { windows: true, maxLags: true, steps: true }, 200],
  ['a wrap on a grid', { maxLags: true, grid: true }, 150],
  ['optional tasks and choices', { optional: true, maxLags: true, goals: ['leftOut'] }, 300],
  [
    'optional tasks in windows',
    { optional: true, windows: true, goals: ['leftOut', 'completion'] },
    200,
  ],
  ['states', { states: 'plain', tasks: 3 }, 300],
  ['states whose changes are missing or go round about', { states: 'odd' }, 250],
  ['changes that take hands', { states: 'odd', changes: true, tasks: 3 }, 300],
  ['limits on sums of spans', { limits: true, maxLags: true }, 300],
  ['spans, completion and lateness', { goals: ['span', 'completion', 'lateness'] }, 200],
  ['time in a state and in changes', { states: 'plain', goals: ['stateOn', 'changeover'] }, 150],
  ['the same where ways go round about', { states: 'odd', goals: ['stateOn', 'changeover'] }, 200],
  ['switches of groups', { goals: ['switches'], tasks: 4 }, 250],
  [
    'lengths of choice in rows',
    { lengths: true, tasks: 3, states: 'odd', goals: ['switches', 'stateOn'] },
    200,
  ],
  ['the least change of an earlier plan', { goals: ['moved'], maxLags: true }, 150],
  [
    'a day that has begun',
    { past: true, maxLags: true, windows: true, lengths: true, tasks: 3 },
    250,
  ],
  [
    'states of a day that has begun',
    { past: true, states: 'odd', changes: true, goals: ['stateOn', 'changeover', 'switches'] },
    250,
  ],
  [
    'everything at once',
    {
      tasks: 3,
      lengths: true,
      windows: true,
      maxLags: true,
      steps: true,
      optional: true,
      states: 'odd',
      changes: true,
      limits: true,
      past: true,
      grid: true,
      goals: [
        'completion',
        'lateness',
        'span',
        'changeover',
        'stateOn',
        'switches',
        'moved',
        'leftOut',
      ],
    },
    400,
  ],
  [
    'optional tasks in rows',
    {
      optional: true,
      states: 'odd',
      changes: true,
      goals: ['stateOn', 'changeover', 'switches', 'leftOut'],
    },
    300,
  ],
];

describe('against everything tried one by one', () => {
  test.each(FEATURES)(
    '%s',
    (_, features, numRuns) => {
      fc.assert(
        fc.property(faceProblems(features), (problem) => {
          expect(valuesOf(planned(problem))).toEqual(bestOfAll(problem));
        }),
        {
          numRuns,
          seed: 20_261_128,
        },
      );
    },
    120_000,
  );
});
