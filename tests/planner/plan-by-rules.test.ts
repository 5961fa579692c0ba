import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planByRules } from '#lib/planner/plan-by-rules';
import type { PlannerProblem } from '#lib/planner/problem';
import { aTask as task } from './a-task';
import { earliestWrap } from './brute-force';
import { smallProblem } from './random-problem';
import { faultsOf } from './tiny-checker';

const problem = (more: Partial<PlannerProblem>): PlannerProblem => ({
  horizon: 1000,
  tasks: [],
  resources: [],
  stateful: [],
  lags: [],
  spanLimits: [],
  ...more,
});
const hands = { hands: 1 };
const oneHand = [{ id: 'hands', capacity: [{ from: 0, units: 1 }] }];
const wrapOf = (given: PlannerProblem): number =>
  Math.max(...planByRules(given, { seed: 1 }).placed.map((entry) => entry.end));

describe('a plan by rules', () => {
  it('keeps every rule wherever all starts tried one by one find a plan, and never claims one elsewhere', () => {
    let satisfiable = 0;
    let optimal = 0;
    fc.assert(
      fc.property(smallProblem, (given) => {
        const answer = planByRules(given, { seed: 1 });
        const best = earliestWrap(given);
        expect(answer.placed.map((entry) => entry.id)).toEqual(given.tasks.map((t) => t.id));
        expect(answer.status).toBe(best === null ? 'stuck' : 'feasible');
        if (best === null) {
          expect(answer.broken.length).toBeGreaterThan(0);
          return;
        }
        satisfiable += 1;
        expect(faultsOf(given, answer.placed)).toEqual([]);
        expect(answer.broken).toEqual([]);
        if (Math.max(0, ...answer.placed.map((entry) => entry.end)) === best) optimal += 1;
      }),
      { numRuns: 400 },
    );
    // The property means little if hardly any case could be planned, or if wrap were left to chance.
    expect(satisfiable).toBeGreaterThan(100);
    expect(optimal / satisfiable).toBeGreaterThan(0.98);
  });

  it('names what it breaks: each named rule is one that the second opinion misses too', () => {
    fc.assert(
      fc.property(smallProblem, (given) => {
        const answer = planByRules(given, { seed: 1 });
        expect(faultsOf(given, answer.placed).length > 0).toBe(answer.status === 'stuck');
      }),
      { numRuns: 300 },
    );
  });

  it('is the same for the same problem and seed', () => {
    fc.assert(
      fc.property(smallProblem, fc.nat(), (given, seed) => {
        expect(planByRules(given, { seed })).toEqual(planByRules(given, { seed }));
      }),
      { numRuns: 50 },
    );
  });
});

describe('each kind of rule', () => {
  it('one pair of hands does one thing at a time', () => {
    const given = problem({
      tasks: [task('a', 3, { demands: hands }), task('b', 4, { demands: hands })],
      resources: oneHand,
    });
    expect(wrapOf(given)).toBe(7);
  });

  it('withdrawn units are a break that tasks stand around', () => {
    const given = problem({
      tasks: [task('a', 3, { demands: hands }), task('b', 4, { demands: hands })],
      resources: [
        {
          id: 'hands',
          capacity: [
            { from: 0, units: 1 },
            { from: 5, units: 0 },
            { from: 8, units: 1 },
          ],
        },
      ],
    });
    expect(wrapOf(given)).toBe(11);
  });

  it('two of three that fit side by side do, the third waits', () => {
    const given = problem({
      tasks: ['a', 'b', 'c'].map((id) => task(id, 5, { demands: { burners: 1 } })),
      resources: [{ id: 'burners', capacity: [{ from: 0, units: 2 }] }],
    });
    expect(wrapOf(given)).toBe(10);
  });

  it('a change of state takes its time, from the initial state and between two', () => {
    const oven = (state: string) => ({ needs: { resource: 'oven', state } });
    const changeover = { cold: { low: 4, high: 9 }, low: { high: 5 }, high: { low: 20 } };
    const given = problem({
      tasks: [task('high', 10, oven('high')), task('low', 10, oven('low'))],
      stateful: [{ id: 'oven', initial: 'cold', changeover }],
    });
    // Low first: 4 + 10 + 5 + 10; high first would be 9 + 10 + 20 + 10.
    expect(wrapOf(given)).toBe(29);
  });

  it('a direct change that is longer than one by way of a third state still takes its own time', () => {
    const oven = (state: string) => ({ needs: { resource: 'oven', state } });
    const changeover = { a: { b: 1, c: 30 }, b: { c: 1 }, c: {} };
    const given = problem({
      tasks: [task('c', 2, oven('c'))],
      stateful: [{ id: 'oven', initial: 'a', changeover }],
    });
    expect(wrapOf(given)).toBe(32);
  });

  it('a greatest lag pulls the earlier task along instead of letting it stand', () => {
    const given = problem({
      tasks: [
        task('bake', 10),
        task('show', 5, { demands: hands, notBefore: 40 }),
        task('other', 20, { demands: hands }),
      ],
      resources: oneHand,
      lags: [
        {
          id: 'hot',
          from: 'bake',
          fromAnchor: 'end',
          to: 'show',
          toAnchor: 'start',
          min: 0,
          max: 5,
        },
      ],
    });
    const { placed, status } = planByRules(given, { seed: 1 });
    expect(status).toBe('feasible');
    expect(placed.find((entry) => entry.id === 'bake')?.end).toBeGreaterThanOrEqual(35);
  });

  it('a length within a range stretches to meet what follows', () => {
    const given = problem({
      tasks: [task('bake', 12, { maxLength: 15 }), task('call', 5, { notBefore: 30 })],
      lags: [
        {
          id: 'at',
          from: 'bake',
          fromAnchor: 'start',
          to: 'call',
          toAnchor: 'start',
          min: 15,
          max: 15,
        },
        {
          id: 'hot',
          from: 'bake',
          fromAnchor: 'end',
          to: 'call',
          toAnchor: 'start',
          min: 0,
          max: 0,
        },
      ],
    });
    expect(planByRules(given, { seed: 1 }).placed[0]).toEqual({ id: 'bake', start: 15, end: 30 });
  });

  it('a sum of spans is kept by moving what stands out later', () => {
    const given = problem({
      tasks: [task('out', 1), task('back', 1, { notBefore: 50 })],
      lags: [
        {
          id: 'then',
          from: 'out',
          fromAnchor: 'end',
          to: 'back',
          toAnchor: 'start',
          min: 0,
          max: null,
        },
      ],
      spanLimits: [
        {
          id: 'lot',
          limit: 10,
          spans: [{ from: 'out', fromAnchor: 'start', to: 'back', toAnchor: 'end' }],
        },
      ],
    });
    const { placed, status } = planByRules(given, { seed: 1 });
    expect(status).toBe('feasible');
    // Not only within the limit: as short as it can be without a later wrap.
    expect(placed[0]?.start).toBe(49);
  });
});

describe('a problem without a plan', () => {
  it('names the horizon if that alone is too near, and keeps everything else', () => {
    const given = problem({
      horizon: 5,
      tasks: [task('a', 3, { demands: hands }), task('b', 4, { demands: hands })],
      resources: oneHand,
    });
    expect(planByRules(given, { seed: 1 })).toMatchObject({ status: 'stuck', broken: ['horizon'] });
  });

  it('names the resource that a task asks too much of', () => {
    const given = problem({
      tasks: [task('a', 3, { demands: { burners: 3 } })],
      resources: [{ id: 'burners', capacity: [{ from: 0, units: 2 }] }],
    });
    expect(planByRules(given, { seed: 1 })).toMatchObject({ status: 'stuck', broken: ['burners'] });
  });

  it('names one of two lags that contradict each other, and keeps the third', () => {
    const lag = (id: string, from: string, to: string, min: number | null, max: number | null) => ({
      id,
      from,
      fromAnchor: 'end' as const,
      to,
      toAnchor: 'start' as const,
      min,
      max,
    });
    const given = problem({
      tasks: [task('a', 3), task('b', 4), task('c', 1)],
      lags: [
        lag('late', 'a', 'b', 20, null),
        lag('soon', 'a', 'b', null, 10),
        lag('then', 'b', 'c', 5, 5),
      ],
    });
    const { status, broken } = planByRules(given, { seed: 1 });
    expect(status).toBe('stuck');
    expect(broken).toHaveLength(1);
    expect(['late', 'soon']).toContain(broken[0]);
  });

  it('says what a window breaks', () => {
    const given = problem({ tasks: [task('a', 5, { notBefore: 10, endBy: 12 })] });
    expect(planByRules(given, { seed: 1 })).toMatchObject({ status: 'stuck', broken: ['a'] });
  });
});
