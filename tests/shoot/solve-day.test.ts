import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { dayFacts } from '#lib/shoot/day-facts';
import type { ShootPlan } from '#lib/shoot/plan';
import { dayPlan, planDay } from '#lib/shoot/plan-day';
import { levelLines, proofText, searchText } from '#lib/shoot/proof-words';
import { firstDay, solveByRules, solveDay, type DayProgress } from '#lib/shoot/solve-day';
import { demoFile } from '../ui/page-support';
import { checkPlan } from './checker';
import { dayFile, link, oven, segment, step } from './made-day';
import { randomDayWithWitness } from './random-day';

const demo = demoFile();
const ofKind = (kind: 'asLived' | 'packed'): EpisodeFile => {
  if (!demo.day) throw new Error('the demo has no day');
  return { ...demo, day: { ...demo.day, kind } };
};
const levelsOf = ({ proof }: ShootPlan) => proof.levels.map(({ level }) => level);

describe('the demo’s day', () => {
  it.each(['asLived', 'packed'] as const)('%s, is proven best in every level', (kind) => {
    const file = ofKind(kind);
    const plan = planDay(file, { seed: 1 });
    expect(checkPlan(file, plan)).toEqual([]);
    expect(plan.proof.status).toBe('proven');
    expect(levelsOf(plan)).toEqual(['wrap', 'danger', 'oven', 'switches']);
    for (const { value, bound, proven } of plan.proof.levels) {
      expect(proven).toBe(true);
      expect(bound).toBe(value);
    }
    // Wrap is looked for on the clock's 5-minute grid (MODEL E.1 of the design).
    const [wrap] = plan.proof.levels;
    expect((wrap?.value ?? 1) % 5).toBe(0);
    expect(Math.ceil(plan.wrapMin / 5) * 5).toBe(wrap?.value);
    expect(plan.lots.reduce((sum, lot) => sum + lot.minutes, 0)).toBe(plan.proof.levels[1]?.value);
  });

  it('is told as it is searched: bounds rise, values fall, the last is the answer', () => {
    const told: DayProgress[] = [];
    const solved = solveDay(dayFacts(demo), { seed: 1, onProgress: (news) => told.push(news) });
    expect(told.length).toBeGreaterThan(3);
    for (const [index, { level, best, bound }] of told.entries()) {
      const before = told[index - 1];
      if (before?.level !== level) continue;
      expect(best ?? Infinity).toBeLessThanOrEqual(before.best ?? Infinity);
      expect(bound ?? -Infinity).toBeGreaterThanOrEqual(before.bound ?? -Infinity);
    }
    expect(told.at(-1)?.solved.placed).toEqual(solved.placed);
  });

  it('that is stopped at once keeps an order that keeps every rule, and says what it does not know', () => {
    const solved = solveDay(dayFacts(demo), { seed: 1, shouldStop: () => true });
    expect(solved.broken).toEqual([]);
    expect(solved.proof.status).toBe('gap');
    expect(solved.placed.length).toBeGreaterThan(0);
  });
});

describe('days made up at random', () => {
  it('wrap no later than by rules, and never before what is proven', () => {
    for (let seed = 1; seed <= 40; seed += 1) {
      const { file } = randomDayWithWitness(seed);
      const byRules = planDay(file, { seed: 1, effort: 0 });
      const plan = planDay(file, { seed: 1, effort: 8 });
      expect(byRules.proof.status).toBe('rules');
      const grid = (minute: number) => Math.ceil(minute / 5) * 5;
      expect(grid(plan.wrapMin), `day ${seed}`).toBeLessThanOrEqual(grid(byRules.wrapMin));
      const [wrap] = plan.proof.levels;
      expect(grid(byRules.wrapMin)).toBeGreaterThanOrEqual(wrap?.bound ?? 0);
      expect(checkPlan(file, plan), `day ${seed}`).toEqual([]);
    }
  });
});

describe('the order that is there at once', () => {
  it('keeps every rule, or says which it breaks', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const { file } = randomDayWithWitness(seed);
      const solved = firstDay(dayFacts(file), 1);
      if (solved.broken.length > 0) continue;
      expect(checkPlan(file, dayPlan(file, solved)), `day ${seed}`).toEqual([]);
    }
  });

  it('is there for most days that have one', () => {
    const days = Array.from({ length: 60 }, (_, index) => randomDayWithWitness(index + 1).file);
    const there = days.filter((file) => firstDay(dayFacts(file), 1).broken.length === 0);
    expect(there.length).toBeGreaterThan(50);
  });
});

describe('two ovens', () => {
  const second = { ...oven, id: 'second', name: 'Second oven' };
  const at = (milliC: number, minutes: number) => ({
    oven: { ovenId: null, milliC },
    racks: 1,
    usualS: 60 * minutes,
  });
  const file = dayFile(
    [
      segment('a', [step('one', at(200_000, 30)), step('two', at(120_000, 30))]),
      segment('b', [step('three', at(200_000, 30)), step('four', at(120_000, 30))]),
    ],
    [],
    {},
    {
      ovens: [
        { ...oven, racks: 2 },
        { ...second, racks: 2 },
      ],
    },
  );

  it('are shared so that none changes its temperature: proven, and as the search by hand says', () => {
    const plan = planDay(file, { seed: 1 });
    expect(checkPlan(file, plan)).toEqual([]);
    expect(plan.proof.status).toBe('proven');
    const ovenOf = (id: string) => plan.entries.find(({ stepId }) => stepId === id)?.ovenId;
    expect(ovenOf('one')).toBe(ovenOf('three'));
    expect(ovenOf('two')).toBe(ovenOf('four'));
    expect(ovenOf('one')).not.toBe(ovenOf('two'));
    // 180 °C up at 6 s each, then 30 minutes with two trays side by side.
    expect(plan.wrapMin).toBe(540 + 18 + 30);
  });
});

describe('in words', () => {
  it('what is proven of a plan, and of its levels', () => {
    const plan = planDay(demo, { seed: 1 });
    expect(proofText(plan.proof)).toBe(
      'Proven for the steps, times and ties as they are written: no order of this kind wraps earlier or is gentler on food, ovens and hands.',
    );
    const lines = levelLines(plan.proof);
    expect(lines.map(({ bound }) => bound)).toEqual(Array(4).fill('the least there is'));
    expect(lines[0]?.value).toMatch(/^\d\d:\d[05]$/);
    const level = { level: 'wrap', value: 995, bound: 960, proven: false } as const;
    const gap = { status: 'gap', levels: [level], clash: [] } as const;
    expect(proofText(gap)).toBe('The best order found; none of this kind wraps before 16:00.');
    expect(levelLines(gap)).toEqual([
      { name: 'Wrap, on the 5-minute grid', value: '16:35', bound: '16:00' },
    ]);
    expect(proofText({ ...gap, levels: [{ ...level, bound: null }] })).toBe(
      'The best order found so far.',
    );
    expect(proofText({ ...gap, levels: [{ ...level, proven: true }] })).toBe(
      'Proven: no order of this kind wraps earlier.',
    );
  });

  it('how far a search is', () => {
    const solved = { ...solveByRules(dayFacts(demo), 1), originMin: 540 };
    expect(searchText(null)).toBe('Looking for the best order.');
    expect(searchText({ solved, level: 0, best: 455, bound: 300 })).toBe(
      'Looking for the best order: wrap at 16:35, none before 14:00.',
    );
    expect(searchText({ solved, level: 0, best: null, bound: null })).toBe(
      'Looking for the best order: no order yet.',
    );
    expect(searchText({ solved, level: 2, best: 70, bound: 60 })).toContain('Wrap is proven');
  });
});

describe('rules that clash', () => {
  it('are told in words beside the broken one, and dropping any one of them helps', () => {
    const links = [
      link('bake', 'show', 3600, null, { id: 'l1', reason: 'must cool' }),
      link('bake', 'show', null, 600, { id: 'l2', reason: 'shown hot' }),
    ];
    const file = dayFile([segment('a', [step('bake'), step('show')])], links);
    const plan = planDay(file, { seed: 1 });
    expect(plan.proof.status).toBe('clash');
    expect([...plan.clash].sort()).toEqual([
      'The start of Step show comes at least 1 h after the end of Step bake (must cool).',
      'The start of Step show comes at most 10 min after the end of Step bake (shown hot).',
    ]);
    expect(proofText(plan.proof)).toBe('Proven: no order keeps every rule.');
    for (const kept of links) {
      const fewer = dayFile([segment('a', [step('bake'), step('show')])], [kept]);
      expect(planDay(fewer, { seed: 1 }).clash).toEqual([]);
    }
  });
});
