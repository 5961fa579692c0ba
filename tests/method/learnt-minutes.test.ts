import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learntTime, rangeOf } from '#lib/method/learnt-minutes';
import { propose } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import { loggedSteps, type LoggedStep } from '#lib/shoot/after-logged';
import type { DayEvent } from '#lib/shoot/day-log';

function method(text: string) {
  const read = readMethod(text, 'EU');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
function firstStep(text: string) {
  const [step] = method(text).steps;
  if (!step) throw new Error('the text has a step');
  return step;
}

const took = (title: string, minutes: number, more: Partial<LoggedStep> = {}): LoggedStep => ({
  title,
  hands: true,
  burners: 0,
  racks: 0,
  ovenMilliC: null,
  date: '2026-03-01',
  seconds: minutes * 60,
  ...more,
});
const inOven = (title: string, minutes: number, milliC: number) =>
  took(title, minutes, { hands: false, racks: 1, ovenMilliC: milliC });

describe('times learnt from logged days', () => {
  it('are those of the same words, whatever their case and marks', () => {
    const logged = [12, 15, 14].map((minutes) => took('chop the onions', minutes));
    const learnt = learntTime(firstStep('Chop the onions.'), [...logged, took('Chop kale', 3)]);
    expect(learnt).toMatchObject({
      words: 'from your last 3 times: 12, 14 and 15 min',
      time: { lowS: 630, usualS: 840, highS: 990 },
    });
  });

  it('else those of the same verb at the same place and heat', () => {
    const bake = firstStep('Bake at 180 °C until golden.');
    const logged = [inOven('Bake the loaf', 31, 180_000), inOven('Bake the crust', 12, 230_000)];
    expect(learntTime(bake, logged)?.words).toBe('from the last time here: 31 min');
    expect(learntTime(bake, [took('Bake a plan', 5)])).toBeNull();
    expect(learntTime(bake, [inOven('Roast the roots', 40, 180_000)])).toBeNull();
  });

  it('are the latest five', () => {
    const days = [1, 2, 3, 4, 5, 6].map((day) => took('Whisk', day, { date: `2026-03-0${day}` }));
    expect(learntTime(firstStep('Whisk.'), days)?.words).toBe(
      'from your last 5 times: 2, 3, 4, 5 and 6 min',
    );
  });

  it('stand in a proposal where the text says no minutes, and only beside it where it does', () => {
    const logged = [took('Chop the onions', 12), inOven('Bake', 33, 200_000)];
    const offered = propose(method('Chop the onions. Bake at 200 °C for 25 minutes.'), {
      ovens: [],
      segment: { washUpS: 60 },
      region: 'EU',
      logged,
    });
    expect(offered.steps.map(({ usualS }) => usualS)).toEqual([720, 1500]);
    const [chop, bake] = offered.steps.map(({ found }) => found.map(({ what }) => what));
    expect(chop).toContain('no minutes in the text: from the last time here: 12 min');
    expect(bake).toContain('it took 33 min here');
  });

  it('keep shortest, usual and longest in order around all that was seen', () => {
    fc.assert(
      fc.property(fc.array(fc.nat(20_000), { minLength: 1, maxLength: 6 }), (seconds) => {
        const { lowS, usualS, highS } = rangeOf(seconds);
        expect(lowS).toBeLessThanOrEqual(usualS);
        expect(usualS).toBeLessThanOrEqual(highS);
        expect(highS).toBeGreaterThanOrEqual(Math.max(...seconds));
        if (Math.min(...seconds) >= 30) expect(lowS).toBeLessThanOrEqual(Math.min(...seconds));
        expect(lowS).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('what a day’s log says of other days', () => {
  const steps = [
    { id: 'a', title: 'Chop', usualS: 600, hands: true, burners: 0, racks: 0, ovenMilliC: null },
  ];
  const log = (minutes: number): DayEvent[] =>
    (['started', 'done'] as const).map((kind, index) => ({
      id: kind,
      deviceId: 'phone',
      deviceSeq: index + 1,
      at: new Date(Date.UTC(2026, 2, 1, 9, index * minutes)).toISOString(),
      kind,
      refs: { stepId: 'a' },
      payload: {},
    }));

  it('is what its steps took, but for what is doubtful', () => {
    expect(loggedSteps('2026-03-01', log(12), steps)).toEqual([took('Chop', 12)]);
    expect(loggedSteps('2026-03-01', log(101), steps)).toEqual([]);
    expect(loggedSteps('2026-03-01', log(12).slice(1), steps)).toEqual([]);
  });
});
