import { describe, expect, test } from 'vitest';
import type { DayFile } from '#lib/episode/also-filmed';
import type { EpisodeFile } from '#lib/episode/schema';
import { rowRefOf, type DayEvent, type Entry } from '#lib/shoot/day-log';
import { foldDay } from '#lib/shoot/fold-day';
import type { PlanEntry } from '#lib/shoot/plan';
import { planDay } from '#lib/shoot/plan-day';
import { replanDay, type Replan } from '#lib/shoot/replan';
import { checkPlan } from './checker';
import { randomDayWithWitness } from './random-day';
import { seeded, type Chance } from './seeded';

const atMinute = (minute: number): string => new Date(minute * 60_000).toISOString();
const minuteOf = (at: string): number => Date.parse(at) / 60_000;
const open = ({ kind }: PlanEntry): boolean => kind === 'step' || kind === 'washUp';

let seq = 0;
const made = (minute: number, entry: Entry): DayEvent => {
  seq += 1;
  return { ...entry, id: `e${seq}`, deviceId: 'phone', deviceSeq: seq, at: atMinute(minute) };
};

/** What was entered up to `nowMin` where everything from `fromMin` on happened `slip` minutes late. */
function logOf(
  entries: readonly PlanEntry[],
  { nowMin, fromMin, slip, skip }: { nowMin: number; fromMin: number; slip: number; skip: string },
): DayEvent[] {
  return entries.filter(open).flatMap((entry) => {
    const late = entry.startMin >= fromMin ? slip : 0;
    const [start, end] = [entry.startMin + late, entry.endMin + late];
    const mark = (kind: 'started' | 'done' | 'skipped', minute: number) =>
      made(minute, { kind, refs: rowRefOf(entry), payload: {} });
    if (start > nowMin) return [];
    if (entry.id === skip) return [mark('skipped', start)];
    return [mark('started', start), ...(end <= nowMin ? [mark('done', end)] : [])];
  });
}

/** The file as the day went: what has begun takes as long as it took, and is held to no pin. */
function asItWent({ file, rows, plan }: Replan): DayFile {
  const took = new Map(
    plan.entries.flatMap(({ id, startMin, endMin }) => {
      const row = rows.get(id);
      return row?.kind === 'over' || row?.kind === 'underWay'
        ? [[id, 60 * (endMin - startMin)] as const]
        : [];
    }),
  );
  return {
    ...file,
    day: file.day && {
      ...file.day,
      pins: file.day.pins.filter(({ stepId }) => !took.has(`step:${stepId}`)),
    },
    episode: {
      ...file.episode,
      segments: file.episode.segments.map((segment) => ({
        ...segment,
        washUpS: took.get(`wash:${segment.id}`) ?? segment.washUpS,
        steps: segment.steps.map((step) => {
          const usualS = took.get(`step:${step.id}`);
          return usualS === undefined ? step : { ...step, usualS, choose: null };
        }),
      })),
    },
  };
}

/** Faults of the checker about anything that has not begun. */
function faultsAhead(replan: Replan): string[] {
  const { rows, plan, file } = replan;
  const settled = new Set(
    plan.entries
      .filter(({ id, kind }) => {
        const row = rows.get(id);
        return kind === 'appointment' || row?.kind === 'over' || row?.kind === 'underWay';
      })
      .map(({ id }) => id),
  );
  const pastLots = file.episode.segments.flatMap(({ perishables }) =>
    perishables
      .filter(({ spans }) =>
        spans.every(
          (span) => settled.has(`step:${span.fromStepId}`) && settled.has(`step:${span.toStepId}`),
        ),
      )
      .map(({ name }) => name),
  );
  return checkPlan(asItWent(replan), plan).filter((fault) => {
    const named = plan.entries.filter(({ id }) => fault.includes(`(${id})`));
    const [, minute] = /in use .*?at (\d+)/.exec(fault) ?? [];
    const using = plan.entries.filter(
      ({ startMin, endMin, burners, racks }) =>
        startMin <= Number(minute) && Number(minute) < endMin && burners + racks > 0,
    );
    if (minute !== undefined) return using.some(({ id }) => !settled.has(id));
    if (named.length > 0) return named.some(({ id }) => !settled.has(id));
    return !pastLots.some((name) => fault.startsWith(`perishable: ${name} `));
  });
}

interface Cut {
  readonly promised: readonly PlanEntry[];
  readonly file: EpisodeFile;
  readonly nowMin: number;
  readonly chance: Chance;
}

function randomCut(seed: number): Cut {
  const { file } = randomDayWithWitness(seed);
  const plan = planDay(file, { seed: 1, effort: 0 });
  const chance = seeded(seed + 10_000);
  return { promised: plan.entries, file, nowMin: chance.int(plan.startMin, plan.wrapMin), chance };
}

const DAYS = 60;

describe('a day that is cut at any minute', () => {
  test('with no slip moves nothing', () => {
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const { promised, file, nowMin } = randomCut(seed);
      const log = logOf(promised, { nowMin, fromMin: 0, slip: 0, skip: '' });
      const { plan } = replanDay(file, promised, foldDay(log), { nowMin, minuteOf });
      const times = (entries: readonly PlanEntry[]) =>
        entries.map(({ id, startMin, endMin, ovenId }) => ({ id, startMin, endMin, ovenId }));
      expect(times(plan.entries), `day ${seed} at ${nowMin}`).toEqual(times(promised));
      expect(plan.status, `day ${seed}`).toBe('feasible');
    }
  });

  test('with a slip keeps every rule from now on or names what it breaks, and moves no past', () => {
    let kept = 0;
    for (let seed = 1; seed <= DAYS; seed += 1) {
      const { promised, file, nowMin, chance } = randomCut(seed);
      const fromMin = chance.int(file.day?.startMin ?? 0, nowMin);
      const slip = chance.pick([1, 3, 5, 12, 20, 40]);
      const skip = chance.percent(30) ? chance.pick(promised.filter(open)).id : '';
      const log = logOf(promised, { nowMin, fromMin, slip, skip });
      const replan = replanDay(file, promised, foldDay(log), { nowMin, minuteOf });
      const { plan, rows } = replan;
      const name = `day ${seed} at ${nowMin}, ${slip} min late from ${fromMin}`;
      for (const entry of plan.entries.filter(open)) {
        const row = rows.get(entry.id);
        if (row?.kind === 'over') {
          expect([entry.startMin, entry.endMin], name).toEqual([row.startMin, row.endMin]);
        } else if (row?.kind === 'underWay') {
          expect([entry.startMin, entry.endMin], name).toEqual([row.startMin, row.untilMin]);
          expect(entry.endMin).toBeGreaterThanOrEqual(nowMin);
        } else {
          expect(entry.startMin, `${name}: ${entry.title}`).toBeGreaterThanOrEqual(nowMin);
        }
      }
      expect(plan.entries.some(({ id }) => id === skip && rows.get(id)?.kind === 'skipped')).toBe(
        false,
      );
      if (plan.broken.length > 0) continue;
      kept += 1;
      expect(faultsAhead(replan), name).toEqual([]);
    }
    expect(kept).toBeGreaterThan(DAYS / 2);
  });
});
