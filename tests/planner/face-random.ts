import fc from 'fast-check';
import type {
  Anchor,
  Goal,
  GoalTerm,
  Placed,
  PlannerProblem,
  StatefulResource,
  Task,
} from '#lib/planner/problem';

/** Which features a random problem has. */
export interface FaceFeatures {
  readonly tasks?: number;
  readonly lengths?: boolean;
  readonly windows?: boolean;
  readonly maxLags?: boolean;
  readonly steps?: boolean;
  readonly optional?: boolean;
  readonly states?: 'plain' | 'odd';
  readonly changes?: boolean;
  readonly limits?: boolean;
  readonly past?: boolean;
  readonly goals?: readonly GoalTerm['kind'][];
  readonly grid?: boolean;
}

const STATES = ['x', 'y', 'z'] as const;
const anchor = fc.constantFrom<Anchor>('start', 'end');

/** Small random problems of the face that can be tried out in full. */
export function faceProblems(features: FaceFeatures): fc.Arbitrary<PlannerProblem> {
  const most = features.tasks ?? 4;
  const horizon = most > 3 ? 7 : 8;
  const some = <T>(wanted: unknown, one: fc.Arbitrary<T>, less: T): fc.Arbitrary<T> =>
    wanted === undefined || wanted === false ? fc.constant(less) : one;
  const task = fc.record({
    minLength: fc.integer({ min: 0, max: 3 }),
    more: some(features.lengths, fc.integer({ min: 0, max: 2 }), 0),
    notBefore: some(features.windows, fc.option(fc.integer({ min: 0, max: 4 })), null),
    endBy: some(features.windows, fc.option(fc.integer({ min: 2, max: 8 })), null),
    hands: fc.integer({ min: 0, max: 1 }),
    burners: fc.integer({ min: 0, max: 2 }),
    state: some<string | null>(features.states, fc.constantFrom(null, ...STATES), null),
    group: fc.constantFrom(null, 'a', 'b'),
    optional: some(features.optional, fc.boolean(), false),
  });
  return fc.integer({ min: 1, max: most }).chain((count) => {
    const id = fc.integer({ min: 0, max: count - 1 }).map((index) => `t${index}`);
    const event = fc.record({ task: id, anchor });
    return fc
      .record({
        tasks: fc.array(task, { minLength: count, maxLength: count }),
        lags: fc.array(
          fc.record({
            from: id,
            fromAnchor: anchor,
            to: id,
            toAnchor: anchor,
            min: fc.option(fc.integer({ min: -2, max: 3 })),
            max: some(features.maxLags, fc.option(fc.integer({ min: 0, max: 5 })), null),
          }),
          { maxLength: 3 },
        ),
        burners: fc.integer({ min: 1, max: 3 }),
        step: some(
          features.steps,
          fc.option(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 }))),
          null,
        ),
        oven: oven(features),
        limits: fc.array(
          fc.record({
            spans: fc.array(fc.record({ from: event, to: event }), { minLength: 1, maxLength: 3 }),
            limit: fc.integer({ min: 0, max: 6 }),
          }),
          { maxLength: features.limits === true ? 2 : 0 },
        ),
        choices: fc.array(
          fc.record({
            least: fc.integer({ min: 0, max: 2 }),
            most: fc.integer({ min: 0, max: 3 }),
          }),
          { maxLength: features.optional === true ? 1 : 0 },
        ),
        goals: goals(features, event, id, count),
        now: fc.integer({ min: 1, max: 4 }),
        begun: fc.array(
          fc.record({
            start: fc.integer({ min: 0, max: 3 }),
            length: fc.option(fc.integer({ min: 0, max: 3 })),
          }),
          { maxLength: features.past === true ? Math.min(2, count) : 0 },
        ),
      })
      .map((made): PlannerProblem => {
        const tasks = made.tasks.map(({ more, hands, burners, state, ...rest }, index): Task => ({
          ...rest,
          id: `t${index}`,
          maxLength: rest.minLength + more,
          demands: { hands, burners },
          needs: state === null ? null : { resource: 'oven', state },
        }));
        const begun = made.begun.map(({ start, length }, index) => ({
          id: `t${index}`,
          start: Math.min(start, made.now),
          end: length === null ? null : Math.min(Math.min(start, made.now) + length, made.now),
        }));
        return {
          horizon,
          tasks,
          resources: [
            { id: 'hands', capacity: [{ from: 0, units: 1 }] },
            {
              id: 'burners',
              capacity: [
                { from: 0, units: made.burners },
                ...(made.step === null ? [] : [{ from: made.step[0], units: made.step[1] }]),
              ],
            },
          ],
          stateful: [made.oven],
          lags: made.lags.map((lag, index) => ({ ...lag, id: `lag${index}` })),
          spanLimits: made.limits.map(({ spans, limit }, index) => ({
            id: `limit${index}`,
            limit,
            spans: spans.map(({ from, to }) => ({
              from: from.task,
              fromAnchor: from.anchor,
              to: to.task,
              toAnchor: to.anchor,
            })),
          })),
          choices: made.choices.map((choice, index) => ({
            id: `choice${index}`,
            ...choice,
            tasks: tasks.filter(({ optional }) => optional === true).map((one) => one.id),
          })),
          goals: made.goals,
          past: features.past === true ? { now: made.now, begun } : null,
        };
      });
  });
}

function oven({ states, changes }: FaceFeatures): fc.Arbitrary<StatefulResource> {
  const time = fc.integer({ min: 0, max: 3 });
  // Triangles hold where each change takes 1 or 2; else long ways may be shorter, and some are missing.
  const change =
    states === 'odd'
      ? fc.oneof({ weight: 3, arbitrary: time }, { weight: 1, arbitrary: fc.constant(null) })
      : fc.integer({ min: 1, max: 2 });
  const demand = changes === true ? fc.integer({ min: 0, max: 2 }) : fc.constant(0);
  const table = <T>(one: fc.Arbitrary<T>) =>
    fc.array(fc.array(one, { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 3 });
  return fc
    .record({ initial: fc.constantFrom(...STATES), change: table(change), hands: table(demand) })
    .map(({ initial, change: times, hands }) => {
      const rows = <T>(cell: (from: number, to: number) => T | null) =>
        Object.fromEntries(
          STATES.map((from, row) => [
            from,
            Object.fromEntries(
              STATES.flatMap((to, column) => {
                const value = from === to ? null : cell(row, column);
                return value === null ? [] : [[to, value] as const];
              }),
            ),
          ]),
        );
      return {
        id: 'oven',
        initial,
        changeover: rows((from, to) => times[from]?.[to] ?? null),
        changeoverDemands: rows((from, to) => {
          const units = hands[from]?.[to] ?? 0;
          return units === 0 ? null : units === 1 ? { hands: 1 } : { burners: 1 };
        }),
      } as StatefulResource;
    });
}

function goals(
  features: FaceFeatures,
  event: fc.Arbitrary<{ task: string; anchor: Anchor }>,
  id: fc.Arbitrary<string>,
  count: number,
): fc.Arbitrary<Goal[]> {
  const weight = fc.integer({ min: 1, max: 3 });
  const time = fc.integer({ min: 0, max: 6 });
  const terms: Record<GoalTerm['kind'], fc.Arbitrary<GoalTerm>> = {
    completion: fc.record({ kind: fc.constant('completion'), event, weight }),
    lateness: fc.record({
      kind: fc.constant('lateness'),
      event,
      due: time,
      early: fc.integer({ min: 0, max: 2 }),
      late: fc.integer({ min: 0, max: 2 }),
    }),
    span: fc.record({ kind: fc.constant('span'), from: event, to: event, weight }),
    changeover: fc.record({
      kind: fc.constant('changeover'),
      resource: fc.constant('oven'),
      weight,
    }),
    stateOn: fc.record({ kind: fc.constant('stateOn'), resource: fc.constant('oven'), weight }),
    switches: fc.record({ kind: fc.constant('switches'), resource: fc.constant('hands'), weight }),
    moved: fc.record({
      kind: fc.constant('moved'),
      from: fc
        .array(time, { minLength: count, maxLength: count })
        .map((times) =>
          times.map((start, index): Placed => ({ id: `t${index}`, start, end: start })),
        ),
      weight,
    }),
    leftOut: fc.record({ kind: fc.constant('leftOut'), task: id, weight }),
  };
  const kinds = features.goals ?? [];
  const latest = fc
    .record({
      events: fc.oneof(fc.constant('all ends' as const), fc.array(event, { maxLength: 3 })),
      step: fc.integer({ min: 1, max: 4 }),
      origin: fc.integer({ min: -4, max: 6 }),
    })
    .map(({ events, ...grid }): Goal => {
      const goal = { id: 'wrap', share: 50, kind: 'latest', events } as const;
      return features.grid === true ? { ...goal, grid } : goal;
    });
  if (kinds.length === 0) return latest.map((goal) => [goal]);
  const sum = fc
    .array(fc.oneof(...kinds.map((kind) => terms[kind])), { minLength: 1, maxLength: 3 })
    .map((all): Goal => ({ id: 'sum', share: 30, kind: 'sum', terms: all }));
  return fc
    .tuple(latest, sum, sum, fc.boolean())
    .map(([first, second, third, order]) =>
      order ? [first, second, third] : [second, first, third],
    );
}
