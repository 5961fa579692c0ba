import fc from 'fast-check';
import type { Anchor, PlannerProblem, Task } from '#lib/planner/problem';

const anchor = fc.constantFrom<Anchor>('start', 'end');

/** Small problems with every kind of rule, satisfiable or not: four tasks within ten units of time. */
export const smallProblem: fc.Arbitrary<PlannerProblem> = fc
  .record({
    tasks: fc.array(
      fc.record({
        length: fc.integer({ min: 0, max: 3 }),
        longer: fc.constantFrom(0, 0, 0, 2),
        notBefore: fc.constantFrom(null, null, 1, 3),
        endBy: fc.constantFrom(null, null, null, 7, 9),
        hands: fc.boolean(),
        burners: fc.integer({ min: 0, max: 2 }),
        state: fc.constantFrom(null, null, 'warm', 'hot'),
      }),
      { minLength: 2, maxLength: 4 },
    ),
    lags: fc.array(
      fc.record({
        from: fc.nat(3),
        to: fc.nat(3),
        fromAnchor: anchor,
        toAnchor: anchor,
        min: fc.constantFrom(null, 0, 1, 2),
        extra: fc.constantFrom(null, 0, 1, 3),
      }),
      { maxLength: 3 },
    ),
    spans: fc.array(
      fc.record({ from: fc.nat(3), to: fc.nat(3), fromAnchor: anchor, toAnchor: anchor }),
      { maxLength: 2 },
    ),
    limit: fc.integer({ min: 0, max: 5 }),
    call: fc.constantFrom(null, 2, 4),
    up: fc.integer({ min: 0, max: 3 }),
    down: fc.integer({ min: 0, max: 3 }),
  })
  .map(({ tasks, lags, spans, limit, call, up, down }) => {
    const id = (index: number): string => `t${index % tasks.length}`;
    return {
      horizon: 10,
      tasks: tasks.map((task, index): Task => ({
        id: id(index),
        minLength: task.length,
        maxLength: task.length === 0 ? 0 : task.length + task.longer,
        notBefore: task.notBefore,
        endBy: task.endBy,
        demands: { hands: task.hands ? 1 : 0, burners: task.burners },
        needs:
          task.state === null || task.length === 0 ? null : { resource: 'oven', state: task.state },
        group: index % 2 === 0 ? 'even' : null,
      })),
      resources: [
        {
          id: 'hands',
          capacity:
            call === null
              ? [{ from: 0, units: 1 }]
              : [
                  { from: 0, units: 1 },
                  { from: call, units: 0 },
                  { from: call + 2, units: 1 },
                ],
        },
        { id: 'burners', capacity: [{ from: 0, units: 2 }] },
      ],
      stateful: [
        {
          id: 'oven',
          initial: 'cold',
          changeover: {
            cold: { warm: up, hot: 2 * up },
            warm: { hot: up, cold: down },
            hot: { warm: down, cold: down },
          },
        },
      ],
      lags: lags.map((lag, index) => ({
        id: `lag${index}`,
        from: id(lag.from),
        fromAnchor: lag.fromAnchor,
        to: id(lag.to),
        toAnchor: lag.toAnchor,
        min: lag.min,
        max: lag.extra === null ? null : (lag.min ?? 0) + lag.extra,
      })),
      spanLimits:
        spans.length === 0
          ? []
          : [
              {
                id: 'lot',
                limit,
                spans: spans.map((span) => ({
                  from: id(span.from),
                  fromAnchor: span.fromAnchor,
                  to: id(span.to),
                  toAnchor: span.toAnchor,
                })),
              },
            ],
    };
  });
