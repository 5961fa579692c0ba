import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { planDay } from '#lib/shoot/plan-day';
import { followSearch, keepOrderSoFar, plannedDay, type SearchNews } from '#lib/work/day-searches';
import { randomDay } from '../shoot/random-day';
import { demoFile } from '../ui/page-support';

/** The demo under another day's id, so that one test does not know what another has searched. */
function aDay(id: string, startMin = 540): EpisodeFile {
  const file = demoFile();
  if (!file.day) throw new Error('the demo has no day');
  return { ...file, day: { ...file.day, id, startMin } };
}

/** A day that is still searched after many seconds. */
const LONG = 17;

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
    const file = randomDay(LONG);
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
    const file = randomDay(LONG);
    if (!file.day) throw new Error('a random day has a day');
    const changed = { ...file, day: { ...file.day, startMin: file.day.startMin + 5 } };
    let over = false;
    await plannedDay(changed, 'first look');
    followSearch(changed, (news) => (over ||= news.over));
    const again = { ...file, day: { ...file.day, startMin: file.day.startMin + 10 } };
    const { searching } = await plannedDay(again, 'first look');
    expect(over).toBe(true);
    expect(searching).toBe(true);
    keepOrderSoFar(again);
  });
});
