import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { drawLengths, simulate } from '#lib/planner/simulate/simulate';
import { leftShifted } from '#lib/planner/simulate/pass';
import { dayFacts } from '#lib/shoot/day-facts';
import { daylightAt } from '#lib/shoot/daylight';
import { likelyDay } from '#lib/shoot/likely';
import { dayGraph } from '#lib/shoot/likely-graph';
import { keptText, likelyInWords } from '#lib/shoot/likely-words';
import { dayPlan } from '#lib/shoot/plan-day';
import { solveByRules, solveDay } from '#lib/shoot/solve-day';
import { demoFile } from '../ui/page-support';
import { dayFile, link, segment, step } from './made-day';
import { orderFaults, type Ran } from './order-kept';
import { randomDay } from './random-day';

/** A step that takes the hands for so many minutes: shortest, usual, longest. */
const timed = (id: string, low: number, usual: number, high: number, more: Partial<Step> = {}) =>
  step(id, { lowS: 60 * low, usualS: 60 * usual, highS: 60 * high, hands: true, ...more });

function likelyOf(file: EpisodeFile, runs = 2000) {
  const solved = solveDay(dayFacts(file), { seed: 1 });
  const likely = likelyDay(file, solved, { seed: 1, runs });
  if (likely === null) throw new Error('the order breaks a rule');
  return { likely, words: likelyInWords(likely, file, dayPlan(file, solved)) };
}

/** What a simulated day is checked by: planned and simulated times by step, in minutes of the day. */
function byStep(ids: readonly string[], times: (index: number) => Ran, originMin: number) {
  return new Map(
    ids.flatMap((id, index): [string, Ran][] => {
      const { start, end } = times(index);
      return id.startsWith('step:')
        ? [[id.slice('step:'.length), { start: start + originMin, end: end + originMin }]]
        : [];
    }),
  );
}

describe('days made up at random', () => {
  const days = Array.from({ length: 60 }, (_, index) => {
    const file = randomDay(index + 1);
    const solved = solveByRules(dayFacts(file), 1);
    return {
      file,
      solved,
      ...dayGraph(dayFacts(file), solved, daylightAt(file.kitchen, '2026-03-14')),
    };
  }).filter(({ solved }) => solved.broken.length === 0);

  it('are begun no later than planned at the planned lengths, and keep what the plan keeps', () => {
    expect(days.length).toBeGreaterThan(50);
    for (const { file, solved, graph, promises } of days) {
      const times = leftShifted(graph);
      const plannedOf = new Map(solved.placed.map(({ id, start }) => [id, start]));
      graph.ids.forEach((id, index) => {
        expect(times.start[index], `${file.episode.title} ${id}`).toBeLessThanOrEqual(
          (plannedOf.get(id) ?? -1) + 1e-6,
        );
      });
      for (const promise of promises) {
        if (promise.kind === 'daylight') continue;
        expect(promise.kept(times), `${file.episode.title} ${promise.id}`).toBe(true);
      }
    }
  });

  it('keep the order on everything, whatever takes long', () => {
    let seen = 0;
    for (const { file, solved, day, graph } of days) {
      // Wider than any step is: from nothing to three times its length.
      const spreads = new Map(
        graph.ids.map((id, index) => {
          const length = graph.lengths[index] ?? 0;
          return [id, { low: 0, mode: length, high: 3 * length }] as const;
        }),
      );
      const plannedOf = new Map(solved.placed.map((one) => [one.id, one]));
      const planned = byStep(
        graph.ids,
        (index) => plannedOf.get(graph.ids[index] ?? '') ?? { start: 0, end: 0 },
        day.originMin,
      );
      const drawn = drawLengths(graph, { runs: 20, seed: 5, spreads });
      simulate(graph, drawn, [], ({ start, end }) => {
        const at = (index: number): Ran => ({ start: start[index] ?? 0, end: end[index] ?? 0 });
        const ran = byStep(graph.ids, at, day.originMin);
        seen += 1;
        expect(orderFaults(file, planned, ran, solved.choice), file.episode.title).toEqual([]);
      });
    }
    expect(seen).toBe(20 * days.length);
  });

  it('the checker sees hands that are taken twice, a tie that is not waited for and an oven in a hurry', () => {
    const found = new Set<string>();
    for (const { file, solved, day, graph } of days) {
      const times = leftShifted(graph);
      const at = (index: number): Ran => ({
        start: times.start[index] ?? 0,
        end: times.end[index] ?? 0,
      });
      const ran = byStep(graph.ids, at, day.originMin);
      // All begun when the day begins.
      const rushed = new Map(
        [...ran].map(([id, { start, end }]): [string, Ran] => {
          return [id, { start: day.originMin, end: day.originMin + end - start }];
        }),
      );
      for (const fault of orderFaults(file, ran, rushed, solved.choice)) {
        found.add(fault.replace(/[^a-z: ]/g, ''));
      }
    }
    const all = [...found].join('\n');
    for (const word of ['hands:', 'camera:', 'burners:', 'oven', 'has', 'pin'])
      expect(all).toContain(word);
  });
});

describe('the demo’s day', () => {
  const demo = demoFile();

  it('is the same for the same seed', () => {
    const solved = solveDay(dayFacts(demo), { seed: 1 });
    const likely = likelyDay(demo, solved, { seed: 1, runs: 300 });
    expect(likelyDay(demo, solved, { seed: 1, runs: 300 })).toEqual(likely);
    expect(likelyDay(demo, solved, { seed: 2, runs: 300 })).not.toEqual(likely);
  });

  it('wraps later the surer one wants to be, and more days tell more', () => {
    const { likely } = likelyOf(demo);
    const { p10, p50, p90 } = likely.wrapMin;
    expect(p10).toBeLessThan(p50);
    expect(p50).toBeLessThan(p90);
    const width = (kept: typeof likely.promises) =>
      kept.reduce((sum, { low, high }) => sum + high - low, 0);
    expect(width(likely.promises)).toBeLessThan(width(likelyOf(demo, 200).likely.promises));
    expect(likely.promises.map(({ kept }) => kept)).toEqual(
      likely.promises.map(({ kept }) => kept).sort((a, b) => a - b),
    );
    for (const { savedMin, weakestBefore, weakestAfter } of likely.changes) {
      expect(savedMin >= 1 || weakestAfter > weakestBefore).toBe(true);
    }
  });
});

describe('what is promised', () => {
  it('the wrap, if one is asked for: as often as one long step is short enough', () => {
    const steps = [timed('long', 60, 60, 120)];
    const file = dayFile([segment('a', steps)], [], { wrapByMin: 630 });
    const { likely } = likelyOf(file);
    const [wrap] = likely.promises;
    expect(wrap?.kind).toBe('horizon');
    // 30 of 60 minutes above the shortest, a falling triangle: 1 − (1/2)².
    expect((wrap?.kept ?? 0) / 2000).toBeCloseTo(0.75, 1);
    expect(wrap?.low).toBeLessThan(0.75);
    expect(wrap?.high).toBeGreaterThan(0.75);
    expect(likelyOf(dayFile([segment('a', steps)])).likely.promises).toEqual([]);
  });

  it('hands that are free for a call, and daylight where the place is known', () => {
    const steps = [timed('film', 10, 20, 60, { onCamera: true, daylight: true })];
    const calls = [{ id: 'call', title: 'Call the shop', startMin: 570, endMin: 580, hands: true }];
    const place = { lat: 55.7, lon: 12.6 };
    const { likely, words } = likelyOf(
      dayFile([segment('a', steps)], [], { appointments: calls }, place),
    );
    expect(likely.promises.map(({ kind }) => kind)).toEqual(['free', 'daylight']);
    expect(words.weakest?.promise).toBe('Hands are free for Call the shop at 09:30.');
    expect(words.always[0]?.promise).toMatch(/^Step film lies in daylight: the sun is up from 0/);
  });

  it('a length that the plan chose is kept exactly', () => {
    const steps = [timed('bake', 1, 30, 200, { choose: { minS: 1800, maxS: 2400 } })];
    const { wrapMin } = likelyOf(dayFile([segment('a', steps)])).likely;
    expect(wrapMin.p10).toBe(wrapMin.p90);
  });

  it('nothing, where the order breaks a rule', () => {
    const steps = [timed('long', 60, 60, 120)];
    const file = dayFile([segment('a', steps)], [], { wrapByMin: 560 });
    const solved = solveDay(dayFacts(file), { seed: 1 });
    expect(solved.broken).not.toEqual([]);
    expect(likelyDay(file, solved, { seed: 1 })).toBeNull();
  });
});

describe('what helps', () => {
  it('is the step that can be so much shorter, and the shot that can be left out', () => {
    const file = dayFile(
      [
        segment('a', [
          timed('prep', 5, 40, 80),
          timed('cook', 20, 22, 24),
          timed('film', 28, 30, 32, { role: 'shoot', onCamera: true }),
        ]),
      ],
      [link('prep', 'cook', 0, null), link('cook', 'film', 0, null)],
      { startMin: 0 },
    );
    const { likely, words } = likelyOf(file);
    expect(likely.changes.map(({ change }) => change.kind)).toEqual([
      'shortest',
      'drop',
      'shortest',
      'shortest',
    ]);
    expect(likely.changes[0]?.change).toEqual({ kind: 'shortest', stepId: 'prep' });
    expect(words.helps).toMatch(
      /^What helps most: Step prep in its shortest time, 5 min\. Nine days in ten then wrap \d.* earlier\.$/,
    );
    expect(words.cut).toMatch(
      /^What to cut first: leave out Step film\. Nine days in ten then wrap (29|30|31) min earlier\.$/,
    );
    expect(words.chain.map(({ title }) => title)).toEqual(['Step prep', 'Step cook', 'Step film']);
    expect(words.chain.map(({ often }) => often)).toEqual(Array(3).fill('100 of 100'));
  });

  it('is a burner, where pans wait for each other', () => {
    const pans = ['one', 'two', 'three'].map((id) =>
      step(id, { lowS: 3600, usualS: 3600, highS: 3600, burners: 1 }),
    );
    const { likely } = likelyOf(dayFile([segment('a', pans)], [], { startMin: 0 }, { burners: 2 }));
    expect(likely.changes).toEqual([
      { change: { kind: 'moreBurners' }, savedMin: 60, weakestBefore: 1, weakestAfter: 1 },
    ]);
  });

  it('is no earlier start, where nothing is promised by the clock: the day is no shorter', () => {
    const { likely } = likelyOf(dayFile([segment('a', [timed('long', 58, 60, 120)])], []));
    expect(likely.changes.map(({ change }) => change.kind)).not.toContain('startEarlier');
  });

  it('is an earlier start, where a wrap is asked for that is hard to keep', () => {
    const file = dayFile([segment('a', [timed('long', 58, 60, 120)])], [], { wrapByMin: 605 });
    const { likely, words } = likelyOf(file);
    expect(likely.changes[0]?.change.kind).toBe('shortest');
    expect(likely.changes[1]?.change).toEqual({ kind: 'startEarlier', minutes: 15 });
    expect(words.alsoHelps[0]).toMatch(
      /^Start 15 min earlier, at 08:45\. The weakest promise is then kept in \d+ of 100 days instead of \d+; nine days in ten then wrap 15 min earlier\.$/,
    );
  });
});

describe('in words', () => {
  it('all and none are said only of what is all and none', () => {
    expect(keptText(2000, 2000)).toBe('kept on all 2000 days tried');
    expect(keptText(1999, 2000)).toBe('kept in more than 99 of 100 days like this');
    expect(keptText(1939, 2000)).toBe('kept in 97 of 100 days like this');
    expect(keptText(1, 2000)).toBe('kept in fewer than 1 of 100 days like this');
    expect(keptText(0, 2000)).toBe('kept on none of 2000 days tried');
  });
});
