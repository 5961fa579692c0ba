import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  offerOfStep,
  offersOf,
  offersText,
  secondsByRow,
  stepsAfter,
  partedByTime,
  withUsual,
  type StepActual,
} from '#lib/shoot/after-steps';
import { actualWords, daySummary } from '#lib/shoot/after-words';
import { dayFacts } from '#lib/shoot/day-facts';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { dayFile, segment, step } from './made-day';

const START = Date.parse('2026-06-06T08:00:00.000Z');

type At = readonly [minute: number, entry: Entry];

/** Events of one device, each so many minutes after eight. */
function logOf(...entries: readonly At[]): DayEvent[] {
  return entries.map(([minute, entry], index): DayEvent => ({
    ...entry,
    id: `e${index}`,
    deviceId: 'phone',
    deviceSeq: index + 1,
    at: new Date(START + minute * 60_000).toISOString(),
  }));
}

type Mark = 'started' | 'done' | 'skipped' | 'redo' | 'takenBack';
const mark = (kind: Mark, stepId = 'a'): Entry => ({ kind, refs: { stepId }, payload: {} });
const longer = (minutes: number): Entry => ({
  kind: 'longer',
  refs: { stepId: 'a' },
  payload: { minutes },
});

/** Ten minutes usually, eight at least, fifteen at most. */
const TEN = step('a', { lowS: 480, usualS: 600, highS: 900 });
const facts = dayFacts(dayFile([segment('s', [TEN, step('b')])]));
const after = (...entries: readonly At[]) => stepsAfter(facts, logOf(...entries));
const actual = (...entries: readonly At[]): StepActual | undefined => after(...entries)[0]?.actual;

describe('what a step took', () => {
  it('is from its start to its end', () => {
    expect(actual([0, mark('started')], [14, mark('done')])).toEqual({
      kind: 'took',
      seconds: 840,
      take: { lowS: 480, usualS: 840, highS: 900 },
    });
    expect(actual([0, mark('started')], [10, mark('done')])).toEqual({
      kind: 'asPlanned',
      seconds: 600,
    });
  });

  it('is not known where no start was entered, nothing was done, or it was skipped', () => {
    expect(actual([14, mark('done')])).toEqual({ kind: 'noStart' });
    expect(actual([0, mark('started')])).toEqual({ kind: 'notDone' });
    expect(actual([0, mark('started')], [5, mark('skipped')])).toEqual({ kind: 'skipped' });
    expect(actual()).toEqual({ kind: 'notDone' });
  });

  it('of the hands without a start is asked about, from what they had done before', () => {
    const byHand = dayFacts(
      dayFile([segment('s', [{ ...TEN, hands: true }, step('b', { hands: true }), step('c')])]),
    );
    const kinds = (...entries: readonly At[]) =>
      stepsAfter(byHand, logOf(...entries)).map(({ actual: { kind } }) => kind);
    const [first] = stepsAfter(byHand, logOf([0, mark('done', 'b')], [12, mark('done')]));
    expect(first?.actual).toMatchObject({ kind: 'sinceDone', seconds: 720 });
    expect(first && actualWords(first).remark).toContain('was it begun then?');
    expect(offersOf(first ? [first] : [])).toEqual([]);
    // Nothing before it, too long before it, and what runs by itself.
    expect(kinds([0, mark('done')])[0]).toBe('noStart');
    expect(kinds([0, mark('done', 'b')], [200, mark('done')])[0]).toBe('noStart');
    expect(kinds([0, mark('done', 'b')], [12, mark('done', 'c')])[2]).toBe('noStart');
  });

  it('is not measured from where it was first said to take longer', () => {
    expect(actual([8, longer(5)], [14, mark('done')])).toEqual({ kind: 'noStart' });
    expect(actual([0, mark('started')], [8, longer(5)], [14, mark('done')])).toMatchObject({
      kind: 'took',
      seconds: 840,
    });
  });

  it('is that of the last making, and goes on where the end was taken back', () => {
    const [first] = after(
      [0, mark('started')],
      [9, mark('done')],
      [20, mark('redo')],
      [21, mark('started')],
      [33, mark('done')],
    );
    expect(first).toMatchObject({ redone: 1, actual: { kind: 'took', seconds: 720 } });
    const back = [mark('started'), mark('done'), mark('takenBack'), mark('done')];
    expect(actual(...back.map((entry, index) => [index * 4, entry] as const))).toMatchObject({
      seconds: 720,
    });
  });

  it('is asked about from under a tenth and over ten times the usual', () => {
    const kind = (minutes: number) => actual([0, mark('started')], [minutes, mark('done')])?.kind;
    expect([0.9, 1, 100, 101].map(kind)).toEqual(['doubtful', 'took', 'took', 'doubtful']);
  });

  it('leaves the shortest, usual and longest time in order, whatever it was', () => {
    const times = fc
      .tuple(fc.nat(90_000), fc.nat(90_000), fc.nat(90_000))
      .map((all) => all.sort((a, b) => a - b))
      .map(([lowS = 0, usualS = 0, highS = 0]) => ({ lowS, usualS, highS }));
    fc.assert(
      fc.property(times, fc.nat(10_000_000), (old, seconds) => {
        const { lowS, usualS, highS } = withUsual(old, seconds);
        expect(lowS).toBeLessThanOrEqual(usualS);
        expect(usualS).toBeLessThanOrEqual(highS);
        expect(highS).toBeLessThanOrEqual(7 * 86_400);
        if (seconds < 600_000) expect(Math.abs(usualS - seconds)).toBeLessThanOrEqual(30);
        expect(lowS).toBeLessThanOrEqual(old.lowS);
        expect(highS).toBeGreaterThanOrEqual(old.highS);
      }),
    );
  });

  it('is the same in whatever order its entries arrived', () => {
    const events = logOf(
      [0, mark('started')],
      [3, longer(9)],
      [7, mark('done')],
      [8, mark('done', 'b')],
    );
    fc.assert(
      fc.property(fc.shuffledSubarray(events, { minLength: events.length }), (shuffled) => {
        expect([...secondsByRow(shuffled)]).toEqual([['step a', 420]]);
      }),
    );
  });
});

describe('what is offered', () => {
  const steps = after(
    [0, mark('started')],
    [14, mark('done')],
    [20, mark('started', 'b')],
    [20.5, mark('done', 'b')],
  );

  it('is what took another time, and a doubtful one only when it is asked for itself', () => {
    expect(offersOf(steps).map(({ step: { id }, take }) => [id, take.usualS])).toEqual([
      ['a', 840],
    ]);
    expect(offerOfStep(steps, 'b')?.take.usualS).toBe(30);
    expect(offerOfStep(steps, 'gone')).toBeNull();
    expect(offerOfStep(after([0, mark('started')], [10, mark('done')]), 'a')).toBeNull();
    expect(offersText(offersOf(steps))).toBe('a 840');
  });

  it('stands apart from what has no time', () => {
    const { timed, untimed } = partedByTime(
      after([0, mark('started', 'b')], [14, mark('done', 'b')]),
    );
    expect([timed, untimed].map((part) => part.map(({ step: { id } }) => id))).toEqual([
      ['b'],
      ['a'],
    ]);
  });
});

describe('in words', () => {
  const [took] = after([0, mark('started')], [14, mark('done')]);
  const [short] = after([0, mark('started')], [0.5, mark('done')]);

  it('a step says what it took and how far that is off', () => {
    expect(took && actualWords(took)).toEqual({
      took: '14 min',
      difference: '4 min more',
      remark: '',
    });
    expect(short && actualWords(short).remark).toContain('was its start pressed late?');
  });

  it('the day says how many steps have their time, and leaves out the doubtful', () => {
    expect(daySummary(after([0, mark('started')], [14, mark('done')]))).toBe(
      'One step has a start and an end: it took 4 min more than planned.',
    );
    expect(daySummary(after([0, mark('started')], [0.5, mark('done')]))).toBe(
      'No step has both its start and its end yet.',
    );
  });
});

describe('the washing-up of a dish', () => {
  const washed = dayFacts(
    dayFile([segment('s', [TEN], { washUpS: 600 }), segment('t', [step('b')])]),
  );
  const entry = (kind: 'started' | 'done'): Entry => ({
    kind,
    refs: { entryId: 'wash:s' },
    payload: {},
  });

  it('has its time like a step, and only where the dish has some', () => {
    const rows = stepsAfter(washed, logOf([0, entry('started')], [15, entry('done')]));
    expect(rows.map(({ step: { id }, washesUp }) => [id, washesUp])).toEqual([
      ['a', false],
      ['b', false],
      ['wash:s', true],
    ]);
    expect(rows.at(-1)?.actual).toMatchObject({ kind: 'took', seconds: 900 });
    expect(offersOf(rows)).toMatchObject([
      { step: { title: 'Wash up Dish s' }, take: { usualS: 900 }, washedSegmentId: 's' },
    ]);
    expect(offerOfStep(rows, 'wash:s')?.washedSegmentId).toBe('s');
  });

  it('without a start is asked about, as hand work is', () => {
    const byHand = dayFacts(dayFile([segment('s', [{ ...TEN, hands: true }], { washUpS: 600 })]));
    const rows = stepsAfter(byHand, logOf([0, mark('done')], [12, entry('done')]));
    expect(rows.at(-1)?.actual).toMatchObject({ kind: 'sinceDone', seconds: 720 });
  });
});
