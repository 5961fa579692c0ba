import { describe, expect, it } from 'vitest';
import type { Reply } from '#lib/episode/publish-schema';
import { pinnedOffers, type AnswerNow } from '#lib/swap/pinned-offers';
import { aDish, aFile, aFood, aRecipe, grams } from '../support/build';

const stew = aFile(
  [aDish('stew', aRecipe('r', [grams('beans', 'beans', 400)]), { title: 'Bean stew' })],
  [aFood('beans', { energyKcal: '80' })],
);
const SLIP = 'fatLeftOut:oil';
const kept = (id: string, slip: string | null, more: Partial<Reply> = {}): Reply => ({
  ...{ id, at: `2026-12-0${id}T10:00:00Z`, comment: 'I get 327', nutrient: 'energyKcal' },
  ...{ number: 327, segmentId: 'stew', slip },
  text: `Thanks for doing the sums. I think I see it: mine is 415 calories, said ${id}.`,
  ...more,
});
const three = [kept('1', SLIP), kept('2', SLIP), kept('4', SLIP)];
const draft = 'Thanks for doing the sums. Mine is 460 calories.';
const now = (more: Partial<AnswerNow> = {}) => {
  const asked: string[] = [];
  const answer = (reply: Reply): AnswerNow => {
    asked.push(reply.id);
    return { draft, slip: SLIP, ours: '415', ...more };
  };
  return { asked, answer };
};

describe('what is worth pinning', () => {
  it('is the latest reply of three alike, and nothing of two', () => {
    const { asked, answer } = now();
    const others = [kept('3', 'half'), kept('5', null)];
    expect(pinnedOffers(stew, [...three.slice(1), ...others], answer)).toEqual([]);
    const offers = pinnedOffers(stew, [...three, ...others], answer);
    expect(offers).toMatchObject([{ slip: SLIP, count: 3, segmentId: 'stew', numbers: 'now' }]);
    expect(offers[0]?.text).toBe(
      'Several of you came to another number for Bean stew. I think I see it: mine is 415 calories, said 4.',
    );
    expect(asked).toEqual(['4']);
  });

  it.each([
    ['another number', '460'],
    ['a number that only stands inside another one', '41'],
    ['a number that goes on', '415.5'],
  ])('is written anew where what goes out now is %s', (_, ours) => {
    const [offer] = pinnedOffers(stew, three, now({ ours }).answer);
    expect(offer).toMatchObject({ numbers: 'anew' });
    expect(offer?.text).toBe(
      'Several of you came to another number for Bean stew. Mine is 460 calories.',
    );
  });

  it('says that it is of old numbers where the difference no longer explains them', () => {
    const [offer] = pinnedOffers(stew, three, now({ ours: '460', slip: null }).answer);
    expect(offer).toMatchObject({ numbers: 'old' });
    expect(offer?.text).toContain('mine is 415 calories');
  });

  it('is of old numbers where the breakdown now has what the viewers had: that number stands in the text as theirs', () => {
    const said = 'Mine is 415 calories; without the oil it would be your 327 calories.';
    const told = three.map((reply) => ({ ...reply, text: said }));
    const [offer] = pinnedOffers(stew, told, now({ ours: '327', slip: null, draft: '' }).answer);
    expect(offer).toMatchObject({ numbers: 'old' });
  });

  it('is nothing for a dish that is gone', () => {
    const gone = three.map((reply) => ({ ...reply, segmentId: 'gone' }));
    expect(pinnedOffers(stew, gone, now().answer)).toEqual([]);
  });
});
