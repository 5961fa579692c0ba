import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { pinCost, withPin, type PinTry } from '#lib/shoot/pin-cost';
import { planDay } from '#lib/shoot/plan-day';
import { dayFile, link, segment, step } from './made-day';

const file = dayFile(
  [segment('a', [step('a', { hands: true }), step('b', { hands: true })])],
  [link('a', 'b', 0, 1800)],
);
const planned = (of: EpisodeFile) => planDay(of, { seed: 1 });
const costOf = (of: EpisodeFile, tried: PinTry) =>
  pinCost(planned(of), planned(withPin(of, tried)), tried);

describe('what a pin costs', () => {
  it('is told at the wrap, with what else moves', () => {
    expect(costOf(file, { stepId: 'b', when: 'at', min: 560 })).toEqual({
      pin: 'Step b at 09:20',
      words: ['The day wraps at 09:30, 10 min later.', 'Nothing else moves.'],
      canBeKept: true,
    });
    const far = costOf(file, { stepId: 'b', when: 'notBefore', min: 700 });
    expect(far.words).toEqual(['The day wraps at 11:50, 2 h 30 min later.', 'Step a moves too.']);
  });

  it('is nothing where the plan does so anyway', () => {
    const same = costOf(file, { stepId: 'b', when: 'notAfter', min: 600 });
    expect(same.words).toEqual(['The day still wraps at 09:20.', 'Nothing else moves.']);
  });

  it('that no order keeps names the rules', () => {
    const none = costOf(file, { stepId: 'b', when: 'notAfter', min: 545 });
    expect(none.canBeKept).toBe(false);
    expect(none.words.join(' ')).toMatch(/Step b takes 10 min: .*pinned to not after 09:05/);
  });

  it('claims no more than is proven: an order by rules alone is only the best so far', () => {
    const tried: PinTry = { stepId: 'b', when: 'notAfter', min: 545 };
    const byRules = planDay(withPin(file, tried), { seed: 1, effort: 0 });
    const cost = pinCost(planned(file), byRules, tried);
    expect(cost).toMatchObject({ canBeKept: false });
    expect(cost.words[0]).toMatch(/is found yet/);
  });

  it('counts in place of a pin that the step has', () => {
    const pins = [{ id: 'p', stepId: 'b', notBeforeMin: 700, notAfterMin: null }];
    const pinned = { ...file, day: file.day && { ...file.day, pins } };
    const cost = costOf(pinned, { stepId: 'b', when: 'notBefore', min: 550 });
    expect(cost.words[0]).toBe('The day wraps at 09:20, 2 h 30 min earlier.');
  });
});
