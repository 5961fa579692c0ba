import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { planDay } from '#lib/shoot/plan-day';
import { followSearch, keepOrderSoFar, plannedDay, type SearchNews } from '#lib/work/day-searches';
import { madeDay } from '../bench/day-made';
import { demoFile } from '../ui/page-support';

/** The demo under another day's id, so that one test does not know what another has searched. */
function aDay(id: string, startMin = 540): EpisodeFile {
  const file = demoFile();
  if (!file.day) throw new Error('the demo has no day');
  return { ...file, day: { ...file.day, id, startMin } };
}

/** A day of ten dishes from a minute on: it is still searched after many seconds, on a quick machine too. */
function longDay(startMin: number): EpisodeFile {
  const file = madeDay(demoFile(), { dishes: 10, meals: 4, mealGapMin: 150 }, 'asLived', 1);
  if (!file.day) throw new Error('a made-up day has a day');
  return { ...file, day: { ...file.day, id: 'long', startMin } };
}

describe('the searches beside the server', () => {
  it('come to the plan that the command line comes to, and keep it', async () => {
    const file = aDay('same');
    const { plan, searching } = await plannedDay(file, 'whole');
    expect(searching).toBe(false);
    expect(plan).toEqual(planDay(file, { seed: 1 }));
    const again = await plannedDay(structuredClone(file), 'first look');
    expect(again).toMatchObject({ plan, searching: false });
  });

  it('tell what they find until it is over', async () => {
    const file = aDay('told');
    const news: SearchNews[] = [];
    await new Promise<void>((resolve) => {
      followSearch(file, (each) => {
        news.push(each);
        if (each.over) resolve();
      });
    });
    expect(news[0]).toMatchObject({ progress: null, over: false });
    expect(news.length).toBeGreaterThan(3);
    expect(news.filter(({ over }) => over)).toHaveLength(1);
    const late: SearchNews[] = [];
    followSearch(file, (each) => late.push(each));
    expect(late.map(({ over }) => over)).toEqual([true]);
  });

  it('end at once when the order is kept: it keeps every rule, and the next search runs', async () => {
    const file = longDay(480);
    const first = await plannedDay(file, 'first look');
    expect(first.searching).toBe(true);
    keepOrderSoFar(file);
    const kept = await plannedDay(file, 'first look');
    expect(kept.searching).toBe(false);
    expect(kept.plan.status).toBe('feasible');
    expect(kept.plan.proof.status).not.toBe('proven');
    const { plan } = await plannedDay(aDay('next'), 'whole');
    expect(plan.proof.status).toBe('proven');
  });

  it('give up what a day was before it was changed', async () => {
    const changed = longDay(485);
    const again = longDay(490);
    let over = false;
    expect(await plannedDay(changed, 'first look')).toMatchObject({ searching: true });
    followSearch(changed, (news) => (over ||= news.over));
    expect(over).toBe(false);
    const { searching } = await plannedDay(again, 'first look');
    expect(over).toBe(true);
    expect(searching).toBe(true);
    keepOrderSoFar(again);
  });
});
