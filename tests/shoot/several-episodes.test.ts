import { describe, expect, it } from 'vitest';
import { filmedAlone, filmedTogether } from '#lib/episode/also-filmed';
import { parseEpisodeData } from '#lib/episode/file';
import type { FilmingDay } from '#lib/episode/day-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import { UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';
import { takeLock } from '#lib/lock/numbers-lock';
import { dayFacts } from '#lib/shoot/day-facts';
import { daySheet } from '#lib/shoot/day-sheet';
import { daySheetText } from '#lib/shoot/day-sheet-text';
import { dayCalendar } from '#lib/shoot/day-calendar';
import { likelyDay } from '#lib/shoot/likely';
import { dayLots } from '#lib/shoot/lot-actions';
import { dayPlan, planDay } from '#lib/shoot/plan-day';
import { solveDay } from '#lib/shoot/solve-day';
import { toProblem } from '#lib/shoot/to-problem';
import { checkPlan } from './checker';
import { dayFile, link, segment, step } from './made-day';
import { randomDay, randomDayWithWitness } from './random-day';
import { asTwo, fromTheOther, SECOND } from './several-episodes';

const SEEDS = Array.from({ length: 40 }, (_, seed) => seed);
/** Questions that a search may ask: few, since what is asked here is whether rules are kept. */
const EFFORT = 8;

/** Intro, dish and a further dish with an intro of its own, the last two another episode's. */
function small(): EpisodeFile {
  const file = dayFile(
    [
      segment('intro', [step('hello', { title: 'Say hello', role: 'talk', hands: true })], {
        kind: 'talk',
        title: 'Intro',
      }),
      segment('hi', [step('hi-there', { title: 'Say hello', role: 'talk', hands: true })], {
        kind: 'talk',
        title: 'intro ',
      }),
      segment('oats', [step('stir', { title: 'Stir', hands: true })], {
        title: 'Oats',
        washUpS: 300,
      }),
      segment('soup', [step('boil', { title: 'Boil', burners: 1 })], {
        title: 'Soup',
        washUpS: 300,
      }),
    ],
    [link('hello', 'stir', 0, null), link('hi-there', 'boil', 0, null)],
  );
  return asTwo({ ...file, episode: { ...file.episode, title: 'Oat week' } });
}

describe('a day of two episodes', () => {
  it('is planned as one: hands, ovens and burners are shared, and no rule of either is broken', () => {
    for (const seed of SEEDS) {
      const file = asTwo(randomDay(seed));
      expect(parseEpisodeData(file), `day ${seed}`).toMatchObject({ ok: true });
      const plan = planDay(file, { seed: 1, effort: seed < 8 ? EFFORT : 0 });
      expect(checkPlan(file, plan), `day ${seed}`).toEqual([]);
    }
  });

  it('can be kept by what keeps the same segments in one episode', () => {
    for (const seed of SEEDS) {
      const { file, witness } = randomDayWithWitness(seed);
      const two = asTwo(file);
      const lots = new Map(dayLots(two).map((lot) => [lot.id, lot]));
      // A lot's clock counts the stretches within its own episode, which the witness states for all of them.
      const same = witness.lots.every(({ perishableId }) => {
        const spans = file.episode.segments.flatMap((s) => s.perishables);
        const all = spans.find(({ id }) => id === perishableId)?.spans.length;
        return all === (lots.get(perishableId)?.spans.length ?? all);
      });
      if (same) expect(checkPlan(two, witness), `day ${seed}`).toEqual([]);
    }
  });

  it('is the same day from the file of either', () => {
    for (const seed of SEEDS) {
      const file = asTwo(randomDay(seed));
      const other = fromTheOther(file);
      const { day } = file;
      const ties = [dayFacts(file), dayFacts(other)].map((facts) => ({
        problem: toProblem(facts, new Map()),
        segments: facts.segments,
        meals: facts.meals.map(({ stepId }) => stepId),
        evening: facts.evening.map(({ step: { id } }) => id),
      }));
      expect(ties[0], `day ${seed} of ${day?.date ?? ''}`).toEqual(ties[1]);
    }
    const plans = [small(), fromTheOther(small())].map((file) => planDay(file, { seed: 1 }));
    expect(plans[0]).toEqual(plans[1]);
  });

  it('names the episode where a title is both’s, and only there', () => {
    const plan = planDay(small(), { seed: 1 });
    const rows = daySheet(small(), plan).rows;
    const told = rows.map(({ entry, segmentTitle }) => `${entry.title} / ${segmentTitle ?? ''}`);
    expect(told.sort()).toEqual([
      'Boil / Soup',
      'Say hello (A second episode) / intro ',
      'Say hello (Oat week) / Intro',
      'Stir / Oats',
      'Wash up Oats / Oats',
      'Wash up Soup / Soup',
    ]);
    const text = daySheetText(small(), plan);
    expect(text).toContain('DAY SHEET: Oat week + A second episode\n');
    expect(text).toContain('Boil (Soup)');
    const calendar = dayCalendar(small(), plan, '2026-06-01T08:00:00.000Z');
    expect(calendar).toContain('SUMMARY:Boil');
    expect(calendar).toMatch(/NAME:Oat week \+ A second episode/);
  });

  it('is gone through by chance as one', () => {
    const solved = solveDay(dayFacts(small()), { seed: 1 });
    const likely = likelyDay(small(), solved, { seed: 1, runs: 50 });
    const ids = dayPlan(small(), solved).entries.flatMap(({ stepId }) => stepId ?? []);
    expect(ids.sort()).toEqual(['boil', 'hello', 'hi-there', 'stir']);
    expect(likely?.chain.length).toBeGreaterThan(0);
  });

  it('leaves a lock as it is without the other, byte for byte', () => {
    const { also: _, ...rest } = small();
    const own = new Set(rest.episode.segments.map(({ id }) => id));
    const alone = {
      ...rest,
      day: rest.day && {
        ...rest.day,
        segments: rest.day.segments.filter(({ segmentId }) => own.has(segmentId)),
      },
    };
    expect(takeLock(small())).toEqual(takeLock(alone));
    expect(takeLock(small()).snapshot).not.toContain(SECOND.title);
    expect(filmedAlone(small())).toEqual(alone);
    expect(parseEpisodeData(filmedAlone(asTwo(randomDay(3))))).toMatchObject({ ok: true });
  });

  it('of one episode is given back as it is, and what was put together stays', () => {
    const one = dayFile([segment('a', [step('s')])]);
    expect(filmedTogether(one)).toBe(one);
    expect(filmedAlone(one)).toBe(one);
    const both = filmedTogether(small());
    expect(filmedTogether(both)).toBe(both);
  });
});

describe('an episode over two days', () => {
  /** The file with one of two days: the dishes cooked on the first and filmed on the second, talk on the first. */
  const onDay = (file: EpisodeFile, date: string, part: 'cook' | 'film'): EpisodeFile => ({
    ...file,
    day: file.day && {
      ...file.day,
      date,
      segments: file.day.segments.flatMap((place): FilmingDay['segments'] => {
        const of = file.episode.segments.find(({ id }) => id === place.segmentId);
        if (of?.kind === 'talk') return part === 'cook' ? [{ ...place, part: 'all' }] : [];
        return [{ ...place, ...UNSAID_DAY_SEGMENT, part }];
      }),
    },
  });

  it('does each step on exactly one of them, and loses none', () => {
    let kept = 0;
    for (const seed of SEEDS) {
      const file = randomDay(seed);
      const days = [onDay(file, '2026-03-14', 'cook'), onDay(file, '2026-03-15', 'film')];
      const done = days.flatMap((day) => {
        const plan = planDay(day, { seed: 1, effort: 0 });
        if (plan.status === 'feasible') kept += 1;
        if (plan.status === 'feasible') expect(checkPlan(day, plan), `day ${seed}`).toEqual([]);
        const evening = dayFacts(day).evening.map(({ step: { id } }) => id);
        return [...plan.entries.flatMap(({ stepId }) => stepId ?? []), ...evening];
      });
      const whole = dayFacts(file);
      const all = [...whole.steps, ...whole.evening].map(({ step: { id } }) => id);
      expect(done.sort(), `day ${seed}`).toEqual(all.sort());
    }
    expect(kept).toBeGreaterThan(SEEDS.length);
  });
});
