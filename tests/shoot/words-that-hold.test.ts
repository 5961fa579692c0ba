import { describe, expect, it } from 'vitest';
import { nextFilmingDate } from '#lib/shoot/default-day';
import { dayFacts } from '#lib/shoot/day-facts';
import { kindWords } from '#lib/shoot/kind-words';
import { ovenPauses } from '#lib/shoot/oven-pauses';
import { dayFile, link, segment, step } from './made-day';

/* Common practice, no source: what a page says of a plan is what the plan holds. */

describe('the kind of day in words', () => {
  const eaten = (id: string) => segment(id, [step(`eat-${id}`, { role: 'eat' })]);
  const words = (ids: readonly string[], day: Parameters<typeof dayFile>[2]) =>
    kindWords(dayFacts(dayFile(ids.map(eaten), [], day)));

  it('claims that meals are apart only where two are eaten and a time is kept', () => {
    const facts = dayFacts(dayFile([eaten('a'), eaten('b')], [], { kind: 'asLived' }));
    const meals = facts.meals.map((meal) => ({
      ...meal,
      segment: { ...meal.segment, eaten: { num: 1, den: 1 } },
    }));
    const day = { ...facts.day, mealGapMin: 150 };
    expect(kindWords({ day, meals })).toMatch(/at least 2 h 30 min after the one before it\.$/);
    expect(kindWords({ day: { ...day, kind: 'packed' }, meals })).toMatch(/2 h 30 min apart\.$/);
    expect(kindWords({ day: { ...day, mealGapMin: 0 }, meals })).toMatch(/no time kept/);
  });

  it('says that nothing is held where nobody eats', () => {
    expect(words([], { kind: 'asLived' })).toMatch(/nothing is kept in order or apart/);
    expect(words([], { kind: 'packed' })).not.toMatch(/apart/);
  });
});

describe('a dish that waits between two times in the oven', () => {
  const facts = dayFacts(
    dayFile(
      [segment('gratin', [step('first'), step('again')]), segment('flan', [step('flan')])],
      [],
    ),
  );
  const entry = (stepId: string, startMin: number, endMin: number) =>
    ({
      ...{ id: stepId, kind: 'step', stepId, segmentId: null, title: stepId, startMin, endMin },
      ...{ hands: false, ovenId: 'oven', milliC: 200_000 },
    }) as unknown as Parameters<typeof ovenPauses>[1][number];

  it('is named where it is long, with the dish that it is of', () => {
    const plan = [entry('first', 540, 570), entry('flan', 570, 600), entry('again', 602, 615)];
    expect([...ovenPauses(facts, plan)]).toEqual([
      ['again', expect.stringMatching(/^32 min after first came out of the oven at 09:30: /)],
    ]);
  });

  it('and not where the dish goes on at once', () => {
    expect(ovenPauses(facts, [entry('first', 540, 570), entry('again', 575, 600)]).size).toBe(0);
    expect(ovenPauses(facts, [entry('first', 540, 570), entry('flan', 640, 660)]).size).toBe(0);
    // Somebody has said how long it takes.
    const links = [link('first', 'again', 1800, null)];
    const plan = [entry('first', 540, 570), entry('again', 602, 615)];
    expect(ovenPauses({ ...facts, links }, plan).size).toBe(0);
  });
});

describe('the date of a new filming day', () => {
  it.each([
    ['2026-03-31', 8 * 60, '2026-03-31'],
    ['2026-03-31', 9 * 60, '2026-03-31'],
    // After nine a day that begins at nine is tomorrow's.
    ['2026-03-31', 19 * 60, '2026-04-01'],
  ])('made on %s at minute %d', (today, minute, date) => {
    expect(nextFilmingDate(today, minute)).toBe(date);
  });
});
