import fc from 'fast-check';
import type { Event, ExactProblem, Goal } from '#lib/planner/exact/problem';

/** Which features a random problem has. */
export interface Features {
  readonly maxLags?: boolean;
  readonly lengths?: boolean;
  readonly windows?: boolean;
  readonly setups?: boolean;
  /** A setup between any two tasks: all are one at a time. */
  readonly allApart?: boolean;
  readonly steps?: boolean;
  readonly frozen?: boolean;
  readonly unary?: boolean;
  readonly deviations?: boolean;
}

/** Small random problems that can be tried out in full. */
export function problems(features: Features): fc.Arbitrary<ExactProblem> {
  const horizon = features.lengths === true ? 7 : 9;
  const task = fc.record({
    minLength: fc.integer({ min: 0, max: 3 }),
    more: features.lengths === true ? fc.integer({ min: 0, max: 2 }) : fc.constant(0),
    notBefore:
      features.windows === true
        ? fc.option(fc.integer({ min: 0, max: 4 }))
        : fc.constant<number | null>(null),
    endBy:
      features.windows === true
        ? fc.option(fc.integer({ min: 3, max: 9 }))
        : fc.constant<number | null>(null),
  });
  return fc
    .integer({ min: 1, max: 4 })
    .chain((count) => {
      const index = fc.integer({ min: 0, max: count - 1 });
      const anchor = fc.constantFrom<Event['anchor']>('start', 'end');
      const event = fc.record({ task: index, anchor });
      const least = features.maxLags === true ? -5 : 0;
      const lag = fc.record({ from: event, to: event, min: fc.integer({ min: least, max: 3 }) });
      const most = features.unary === true ? 1 : 3;
      const units = fc.integer({ min: 1, max: most });
      const capacity =
        features.steps === true
          ? fc
              .tuple(units, fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: most }))
              .map(([before, from, after]) => [
                { from: 0, units: before },
                { from, units: after },
              ])
          : units.map((one) => [{ from: 0, units: one }]);
      const demands = fc.array(fc.integer({ min: 0, max: most }), {
        minLength: count,
        maxLength: count,
      });
      const gap = fc.integer({ min: 0, max: 2 });
      const weight = fc.integer({ min: 0, max: 3 });
      const deviation = fc.record({
        event,
        due: fc.integer({ min: 0, max: 7 }),
        early: weight,
        late: weight,
      });
      return fc.record({
        tasks: fc.array(task, { minLength: count, maxLength: count }),
        resources: fc.array(fc.record({ capacity, demands }), { maxLength: 2 }),
        lags: fc.array(lag, { maxLength: features.maxLags === true ? 5 : 3 }),
        setups: fc.array(fc.record({ first: index, second: index, between: gap, back: gap }), {
          maxLength: features.setups === true ? 3 : 0,
        }),
        apart: fc.array(fc.record({ between: gap, back: gap }), {
          minLength: features.allApart === true ? (count * (count - 1)) / 2 : 0,
          maxLength: features.allApart === true ? (count * (count - 1)) / 2 : 0,
        }),
        deviations: fc.array(deviation, { maxLength: features.deviations === true ? 4 : 0 }),
        first: fc.boolean(),
        frozen: fc.array(fc.record({ task: index, start: fc.integer({ min: 0, max: 4 }) }), {
          maxLength: features.frozen === true ? 1 : 0,
        }),
      });
    })
    .map((made): ExactProblem => {
      const wrap: Goal = {
        name: 'wrap',
        kind: 'latest',
        events: made.tasks.map((_, index) => ({ task: index, anchor: 'end' })),
      };
      const sum: Goal = { name: 'deviations', kind: 'deviations', of: made.deviations };
      const both = made.first ? [wrap, sum] : [sum, wrap];
      const couples = made.tasks.flatMap((_, first) =>
        made.tasks.slice(first + 1).map((_, more) => ({ first, second: first + 1 + more })),
      );
      const apart = made.apart.map((gaps, index) => ({
        ...(couples[index] ?? { first: 0, second: 0 }),
        ...gaps,
      }));
      return {
        horizon,
        tasks: made.tasks.map(({ minLength, more, notBefore, endBy }, index) => ({
          name: `task ${index}`,
          minLength,
          maxLength: minLength + more,
          notBefore,
          endBy,
        })),
        resources: made.resources.map((resource, index) => ({
          name: `resource ${index}`,
          ...resource,
        })),
        lags: made.lags.map((lag, index) => ({ name: `lag ${index}`, ...lag })),
        setups: [...made.setups, ...apart]
          .filter(({ first, second }) => first !== second)
          .map((setup, index) => ({ name: `setup ${index}`, ...setup })),
        goals: features.deviations === true ? both : [wrap],
        frozen: made.frozen.map(({ task, start }) => ({ task, start, end: null })),
      };
    });
}
