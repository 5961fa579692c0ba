import { describe, expect, it } from 'vitest';
import { compareGoals, goalsOf } from '#lib/planner/goals';
import type { PlannerProblem, Task } from '#lib/planner/problem';
import { seededRandom } from '#lib/planner/seeded-random';

const task = (id: string, state: string | null, group: string, hands = 0): Task => ({
  id,
  minLength: 10,
  maxLength: 10,
  notBefore: null,
  endBy: null,
  demands: { hands },
  needs: state === null ? null : { resource: 'oven', state },
  group,
});
const problem: PlannerProblem = {
  horizon: 1000,
  tasks: [task('a', 'hot', 'one', 1), task('b', 'hot', 'two', 1), task('c', null, 'one', 1)],
  resources: [{ id: 'hands', capacity: [{ from: 0, units: 1 }] }],
  stateful: [{ id: 'oven', initial: 'cold', changeover: { cold: { hot: 8 } } }],
  lags: [],
  spanLimits: [
    {
      id: 'lot',
      limit: 60,
      spans: [
        { from: 'a', fromAnchor: 'end', to: 'b', toAnchor: 'start' },
        { from: 'b', fromAnchor: 'end', to: 'a', toAnchor: 'start' },
      ],
    },
  ],
};
const at = (a: number, b: number, c: number) =>
  [a, b, c].map((start, index) => ({ id: 'abc'.charAt(index), start, end: start + 10 }));

describe('the goals of a plan', () => {
  it('count wrap, spans (a negative one as 0), time in a state with a short pause, and switches', () => {
    expect(goalsOf(problem, at(8, 23, 40))).toEqual({
      wrap: 50,
      spans: 5,
      // 8 to heat, 10 + 10 in use, a pause of 5.
      stateOn: 33,
      switches: 2,
    });
  });

  it('a long pause in one state counts no more than making the state again', () => {
    expect(goalsOf(problem, at(8, 300, 40)).stateOn).toBe(8 + 10 + 8 + 10);
  });

  it('an earlier goal outweighs all later ones', () => {
    const early = { wrap: 1, spans: 9, stateOn: 9, switches: 9 };
    const late = { wrap: 2, spans: 0, stateOn: 0, switches: 0 };
    expect(compareGoals(early, late)).toBeLessThan(0);
    expect(compareGoals(late, early)).toBeGreaterThan(0);
    expect(compareGoals(early, early)).toBe(0);
  });
});

describe('seeded chance', () => {
  it('repeats for a seed, differs between seeds and fills the unit interval evenly', () => {
    const draw = (seed: number) => {
      const next = seededRandom(seed);
      return Array.from({ length: 10_000 }, next);
    };
    expect(draw(7)).toEqual(draw(7));
    expect(draw(7)).not.toEqual(draw(8));
    const tenths = new Array<number>(10).fill(0);
    for (const value of draw(7)) {
      expect(value).toBeGreaterThanOrEqual(0);
      expect(value).toBeLessThan(1);
      tenths[Math.floor(value * 10)] = (tenths[Math.floor(value * 10)] ?? 0) + 1;
    }
    // 1,000 each ± 5 standard deviations of a binomial (30).
    for (const count of tenths) expect(Math.abs(count - 1000)).toBeLessThan(150);
  });
});
