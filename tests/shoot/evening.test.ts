import { describe, expect, test } from 'vitest';
import { pinnedWords } from '#lib/overview/evening-words';
import { daysBefore, eveningSteps } from '#lib/shoot/evening';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { dayFile, link, segment, step } from './made-day';

/** Minutes after midnight of the filming day of a clock time on the day before. */
const before = (hour: number, minute = 0): number => (hour - 24) * 60 + minute;

const entry = (stepId: string, startMin: number, endMin: number): PlanEntry => ({
  id: `entry-${stepId}`,
  kind: 'step',
  stepId,
  segmentId: 'a',
  title: stepId,
  startMin,
  endMin,
  hands: true,
  onCamera: false,
  ovenId: null,
  milliC: null,
  racks: 0,
  burners: 0,
  why: '',
});

/** A day from nine: cook at 10:00 to 10:30. */
const PLAN: ShootPlan = {
  dayId: 'day',
  date: '2026-06-06',
  kind: 'packed',
  startMin: 540,
  wrapMin: 700,
  status: 'feasible',
  entries: [entry('cook', 600, 630)],
  lots: [],
  broken: [],
  proof: { status: 'rules', levels: [], clash: [] },
  clash: [],
};

function evening(steps: readonly [string, number, Partial<Step>?][], links: readonly StepLink[]) {
  const made = steps.map(([id, minutes, more]) =>
    step(id, { usualS: minutes * 60, evening: true, ...more }),
  );
  const file = dayFile([segment('a', [...made, step('cook', { hands: true })])], links);
  return eveningSteps(file, PLAN);
}
const starts = (...given: Parameters<typeof evening>) =>
  Object.fromEntries(evening(...given).map(({ step: { id }, startMin }) => [id, startMin]));

/* Expected times are worked out by hand from the clock: nothing of the module is used for them. */
describe('the evening before, worked back', () => {
  test('a marinade of at least 13 h before 10:00 that takes 15 min is begun at 20:45', () => {
    expect(
      starts([['marinate', 15, { hands: true }]], [link('marinate', 'cook', 780 * 60, null)]),
    ).toEqual({
      marinate: before(20, 45),
    });
  });

  test('counted from its start, its own length is no part of the wait', () => {
    const tie = link('soak', 'cook', 780 * 60, null, { fromAnchor: 'start' });
    expect(starts([['soak', 600]], [tie])).toEqual({ soak: before(21) });
  });

  test('counted to the end of what waits', () => {
    const tie = link('soak', 'cook', 780 * 60, null, { fromAnchor: 'start', toAnchor: 'end' });
    expect(starts([['soak', 600]], [tie])).toEqual({ soak: before(21, 30) });
  });

  test('the tie that asks for the longest time decides', () => {
    const ties = [
      link('salt', 'cook', 60, null),
      link('salt', 'cook', 14 * 3600, null, { id: 'long' }),
    ];
    expect(starts([['salt', 10, { hands: true }]], ties)).toEqual({ salt: before(19, 50) });
  });

  test('what may be begun at night is begun before bed, hands done by 22:00', () => {
    expect(starts([['chill', 480]], [link('chill', 'cook', 0, null)])).toEqual({
      chill: before(22),
    });
    expect(starts([['mix', 20, { hands: true }]], [link('mix', 'cook', 0, null)])).toEqual({
      mix: before(21, 40),
    });
  });

  test('what has to be begun at night is begun the evening before that', () => {
    // 30 h before 10:00 is 04:00 of the day before.
    expect(starts([['thaw', 1800]], [link('thaw', 'cook', 0, null)])).toEqual({
      thaw: before(22) - 1440,
    });
  });

  test('a chain goes back from step to step', () => {
    const links = [link('cover', 'chill', 0, null), link('chill', 'cook', 0, null)];
    const chain = starts(
      [
        ['chill', 600],
        ['cover', 5, { hands: true }],
      ],
      links,
    );
    expect(chain).toEqual({ chill: before(22), cover: before(21, 55) });
  });

  test('one pair of hands does one thing at a time; what runs by itself is in nobody’s way', () => {
    const hands = { hands: true };
    const found = evening(
      [
        ['a1', 10, hands],
        ['a2', 20, hands],
        ['a3', 300],
      ],
      [],
    );
    const handed = found.filter(({ step: { hands: busy } }) => busy);
    for (const one of handed) {
      for (const other of handed.filter((each) => each !== one)) {
        expect(one.endMin <= other.startMin || other.endMin <= one.startMin).toBe(true);
      }
    }
    expect(Math.max(...handed.map(({ endMin }) => endMin))).toBe(before(22));
    expect(Math.min(...handed.map(({ startMin }) => startMin))).toBe(before(21, 30));
  });

  test('what nothing waits for is done when the day starts', () => {
    // 12 h before 9:00.
    expect(starts([['defrost', 720]], [])).toEqual({ defrost: before(21) });
  });

  test('sorted by the clock, and only what is ticked', () => {
    const found = evening(
      [
        ['late', 5, { hands: true }],
        ['early', 5, { hands: true }],
        ['day', 5, { evening: false }],
      ],
      [link('early', 'cook', 15 * 3600, null)],
    );
    expect(found.map(({ step: { id } }) => id)).toEqual(['early', 'late']);
  });

  test('at most so long before: when it may be begun at the soonest, and that it is too early', () => {
    const [dress] = evening([['dress', 10, { hands: true }]], [link('dress', 'cook', 0, 2 * 3600)]);
    // At most 2 h before 10:00, itself 10 min: not before 7:50.
    expect(dress).toMatchObject({ notBeforeMin: 470, tooEarly: true });
    const [rest] = evening([['rest', 10, { hands: true }]], [link('rest', 'cook', 0, 14 * 3600)]);
    // At most 14 h before 10:00: not before 19:50, and 21:50 is later.
    expect(rest).toMatchObject({ notBeforeMin: before(19, 50), tooEarly: false });
  });

  test('ties in a ring end, and each step stands once', () => {
    const ring = [link('x', 'y', 0, null), link('y', 'x', 0, null)];
    expect(
      evening(
        [
          ['x', 5],
          ['y', 5],
        ],
        ring,
      ),
    ).toHaveLength(2);
  });

  test('a dish that was cooked before leaves nothing for the evening', () => {
    const made = segment('a', [step('soak', { evening: true })]);
    const day = {
      segments: [{ id: 'd', segmentId: 'a', pickup: false, part: 'film', fate: null }],
    } as const;
    expect(eveningSteps(dayFile([made], [], { segments: [...day.segments] }), PLAN)).toEqual([]);
    expect(eveningSteps(dayFile([made]), PLAN)).toHaveLength(1);
  });

  test('days are counted back over months and leap years', () => {
    expect(daysBefore('2026-03-01', 1)).toBe('2026-02-28');
    expect(daysBefore('2028-03-01', 1)).toBe('2028-02-29');
    expect(daysBefore('2026-01-01', 2)).toBe('2025-12-30');
  });
});

test('a tie to a clock time is one of the filming day: it moves no step of the evening, and is told', () => {
  const pin = { id: 'p', stepId: 'marinate', notBeforeMin: 560, notAfterMin: null };
  const soaked = step('marinate', { usualS: 900, hands: true, evening: true });
  const steps = [soaked, step('cook', { hands: true })];
  const links = [link('marinate', 'cook', 780 * 60, null)];
  const of = (pins: (typeof pin)[]) =>
    eveningSteps(dayFile([segment('a', steps)], links, { pins }), PLAN).at(0);
  expect(of([pin])).toEqual({ ...of([]), pins: [pin] });
  expect(pinnedWords({ pins: [pin] })).toBe(
    'It is tied to a time of the filming day (not before 09:20): that does not hold, since it is done before.',
  );
  expect(pinnedWords({ pins: [] })).toBeNull();
});
