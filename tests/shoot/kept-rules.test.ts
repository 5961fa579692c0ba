import { describe, expect, it } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';
import { planDay } from '#lib/shoot/plan-day';
import { checkPlan } from './checker';
import { dayFile, link, segment, step } from './made-day';
import { randomKeptDay } from './random-kept';

const plan = (file: EpisodeFile): ShootPlan => planDay(file, { seed: 1 });
const entryOf = ({ entries }: ShootPlan, title: string): PlanEntry => {
  const found = entries.find((entry) => entry.title === title);
  if (found === undefined)
    throw new Error(`no ${title} among ${entries.map((e) => e.title).join(', ')}`);
  return found;
};
/** The plan with an entry elsewhere or left out: a day that nobody may be offered. */
const wrong = (of: ShootPlan, title: string, startMin: number | null): ShootPlan => ({
  ...of,
  entries: of.entries.flatMap((entry) => {
    if (entry.title !== title) return [entry];
    if (startMin === null) return [];
    return [{ ...entry, startMin, endMin: startMin + entry.endMin - entry.startMin }];
  }),
});
const faultsOf = (file: EpisodeFile, of: ShootPlan): string[] => checkPlan(file, of);
/** A dish, so that its shots and bites count as a dish's. */
const dish: Parameters<typeof segment>[2] = {
  recipe: {
    id: 'r',
    title: 'r',
    lines: [],
    weighings: [],
    portions: [],
    method: '',
    cooking: null,
  },
};

describe('raw meat, poultry, fish and egg', () => {
  const raw = step('raw', { hands: true, contact: 'rawAnimal' });
  const salad = step('salad', { hands: true, contact: 'readyToEat' });

  it('never comes before ready-to-eat work without a clean-down', () => {
    // The salad may not come first.
    const file = dayFile(
      [segment('a', [raw]), segment('b', [salad])],
      [link('raw', 'salad', 0, null)],
    );
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(entryOf(day, 'Clean down after Dish a').startMin).toBe(550);
    expect(entryOf(day, 'Step salad').startMin).toBe(555);
    expect(day.proof.status).toBe('proven');
    const early = wrong(day, 'Step salad', 550);
    expect(faultsOf(file, early).join()).toMatch(/contact: no clean-down from/);
    expect(faultsOf(file, wrong(day, 'Clean down after Dish a', null)).join()).toMatch(/contact:/);
  });

  it('goes last where that saves the wait, and is cleaned up after all the same', () => {
    const file = dayFile([segment('a', [raw]), segment('b', [salad])]);
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(day.wrapMin).toBe(565);
  });

  it('in the oven needs both: the oven’s heat and clean hands after it', () => {
    const bake = step('bake', {
      hands: true,
      contact: 'rawAnimal',
      racks: 1,
      oven: { ovenId: null, milliC: 200_000 },
    });
    const file = dayFile(
      [segment('a', [bake]), segment('b', [salad])],
      [link('bake', 'salad', 0, null)],
    );
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(entryOf(day, 'Step salad').startMin).toBe(entryOf(day, 'Step bake').endMin + 5);
  });

  it('that must be followed at once by ready-to-eat work clashes, and the clash is told', () => {
    const file = dayFile(
      [segment('a', [raw]), segment('b', [salad])],
      [link('raw', 'salad', 0, 120)],
    );
    const day = plan(file);
    expect(day.status).toBe('stuck');
    expect(day.proof.status).toBe('clash');
    expect(day.clash.join(' ')).toContain('hands, board and counter are cleaned');
  });
});

describe('daylight', () => {
  // Copenhagen (55.68 N, 12.57 E) on 12 December: sunrise 08:29, sunset 15:37 (NOAA solar calculator, from memory;
  // the checker's own equations agree within two minutes).
  const place = { lat: 55.68, lon: 12.57, zone: 'Europe/Copenhagen' };
  const lit = step('lit', { onCamera: true, hands: true, daylight: true });
  const winter = { date: '2026-12-12', startMin: 420 };

  it('is waited for, the margin of the day off sunrise', () => {
    const file = dayFile([segment('a', [lit])], [], { ...winter, lightMarginMin: 30 }, place);
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(Math.abs(entryOf(day, 'Step lit').startMin - (8 * 60 + 29 + 30))).toBeLessThanOrEqual(3);
    expect(entryOf(day, 'Step lit').why).toMatch(/^daylight from 08:5\d|^daylight from 09:0\d/);
    expect(faultsOf(file, wrong(day, 'Step lit', 430)).join()).toMatch(/light:/);
  });

  it('after sunset cannot be had: told in words', () => {
    const file = dayFile([segment('a', [lit])], [], { ...winter, startMin: 960 }, place);
    const day = plan(file);
    expect(day.status).toBe('stuck');
    expect(day.broken.map(({ message }) => message).join()).toMatch(/it needs daylight, from/);
  });

  it('inside the polar circle in December there is none', () => {
    const north = { lat: 69.65, lon: 18.96, zone: 'Europe/Oslo' };
    const file = dayFile([segment('a', [lit])], [], winter, north);
    const day = plan(file);
    expect(day.status).toBe('stuck');
    expect(day.broken.map(({ message }) => message).join()).toMatch(/there is none that day/);
    const june = dayFile([segment('a', [lit])], [], { date: '2026-06-12', startMin: 420 }, north);
    expect(plan(june).status).toBe('feasible');
  });

  it('in a kitchen whose place nobody has said is not asked for', () => {
    const file = dayFile([segment('a', [lit])], [], winter);
    expect(entryOf(plan(file), 'Step lit').startMin).toBe(420);
  });
});

describe('pins', () => {
  it('hold a step to a minute, or to no later than one', () => {
    const pins = [{ id: 'p', stepId: 'b', notBeforeMin: 600, notAfterMin: 600 }];
    const file = dayFile(
      [segment('a', [step('a', { hands: true }), step('b', { hands: true })])],
      [],
      { pins },
    );
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(entryOf(day, 'Step b').startMin).toBe(600);
    expect(entryOf(day, 'Step b').why).toBe('at 10:00, as pinned');
    expect(faultsOf(file, wrong(day, 'Step b', 605)).join()).toMatch(/after its pin/);
  });

  it('that contradict each other are told', () => {
    const pins = [
      { id: 'p', stepId: 'b', notBeforeMin: 700, notAfterMin: null },
      { id: 'q', stepId: 'b', notBeforeMin: null, notAfterMin: 650 },
    ];
    const day = plan(dayFile([segment('a', [step('b', { hands: true })])], [], { pins }));
    expect(day.status).toBe('stuck');
    expect(day.broken[0]?.message).toContain(
      'pinned to not before 11:40; pinned to not after 10:50',
    );
  });

  it('hold the start of a step whose length the plan chooses', () => {
    const pins = [{ id: 'p', stepId: 'b', notBeforeMin: null, notAfterMin: 545 }];
    const b = step('b', { hands: true, usualS: 1800, choose: { minS: 600, maxS: 3600 } });
    const file = dayFile([segment('a', [step('a', { hands: true }), b])], [], { pins });
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(entryOf(day, 'Step b').startMin).toBe(540);
  });
});

describe('what the kitchen has room for', () => {
  it('an appliance takes so many steps at a time', () => {
    const fry = (id: string) => step(id, { applianceId: 'fryer' });
    const appliances = [{ id: 'fryer', name: 'Air fryer', places: 1 }];
    const file = dayFile([segment('a', [fry('x'), fry('y')])], [], {}, { appliances });
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(day.wrapMin).toBe(560);
    expect(faultsOf(file, wrong(wrong(day, 'Step x', 540), 'Step y', 545)).join()).toMatch(
      /appliance:/,
    );
  });

  it('the counter counts only where the kitchen counts it', () => {
    const on = (id: string) => step(id, { counter: 2 });
    const steps = [segment('a', [on('x'), on('y')])];
    expect(plan(dayFile(steps)).wrapMin).toBe(550);
    const file = dayFile(steps, [], {}, { counterPlaces: 3 });
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(day.wrapMin).toBe(560);
    expect(faultsOf(file, wrong(wrong(day, 'Step x', 540), 'Step y', 545)).join()).toMatch(
      /counter:/,
    );
  });

  it('moving the camera takes its minutes and the hands; shots from one place come together', () => {
    const shot = (id: string, cameraSetUp: string) =>
      step(id, { role: 'shoot', onCamera: true, hands: true, cameraSetUp });
    const steps = [
      shot('x', 'over the board'),
      shot('y', 'at the window'),
      shot('z', 'over the board'),
    ];
    const file = dayFile([segment('a', steps)], [], {}, { cameraChangeS: 240 });
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(day.wrapMin).toBe(540 + 30 + 4);
    expect(day.entries.filter(({ kind }) => kind === 'cameraMove')).toHaveLength(1);
    const title = day.entries.find(({ kind }) => kind === 'cameraMove')?.title ?? '';
    expect(title).toMatch(/^Move the camera: /);
    expect(faultsOf(file, wrong(day, title, null)).join()).toMatch(/camera:/);
  });
});

describe('the story', () => {
  it('before anything is dirty, or after everything is ready', () => {
    const talk = (filmedWhen: 'beforeDirty' | 'afterReady') =>
      segment('t', [step('t', { role: 'talk', hands: true, onCamera: true })], { filmedWhen });
    const cook = segment('a', [step('a', { hands: true }), step('b', { hands: true })], dish);
    const first = dayFile([cook, talk('beforeDirty')]);
    const before = plan(first);
    expect(faultsOf(first, before)).toEqual([]);
    expect(entryOf(before, 'Step t').startMin).toBe(540);
    expect(faultsOf(first, wrong(before, 'Step t', 560)).join()).toMatch(/story:/);
    const last = dayFile([cook, talk('afterReady')]);
    const after = plan(last);
    expect(faultsOf(last, after)).toEqual([]);
    expect(entryOf(after, 'Step t').startMin).toBe(560);
    expect(faultsOf(last, wrong(after, 'Step t', 530)).join()).toMatch(/story:/);
  });

  it('the still comes before the first bite, and what must rest has rested', () => {
    const steps = [
      step('roast', { restS: 600 }),
      step('still', { role: 'shoot', hands: true, onCamera: true }),
      step('bite', { role: 'taste', hands: true, onCamera: true }),
    ];
    const file = dayFile([segment('a', steps, dish)]);
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(entryOf(day, 'Step bite').startMin).toBe(560);
    expect(entryOf(day, 'Step bite').why).toBe('10 min of rest after Step roast');
    expect(faultsOf(file, wrong(day, 'Step bite', 550)).join()).toMatch(/bite:/);
  });
});

describe('what belongs to the day', () => {
  it('is not what is done the evening before', () => {
    const steps = [step('soak', { evening: true }), step('cook', { hands: true })];
    const file = dayFile([segment('a', steps)], [link('soak', 'cook', 28_800, null)]);
    const day = plan(file);
    expect(faultsOf(file, day)).toEqual([]);
    expect(day.entries.map(({ title }) => title)).toEqual(['Step cook']);
  });

  it('of a dish that was cooked before are its shots, of one that is filmed later its cooking', () => {
    const steps = [step('cook', { hands: true }), step('show', { role: 'shoot', hands: true })];
    const on = (part: 'cook' | 'film') =>
      dayFile([segment('a', steps)], [], {
        segments: [{ id: 'on', segmentId: 'a', pickup: false, part, fate: null }],
      });
    for (const part of ['cook', 'film'] as const) {
      const day = plan(on(part));
      expect(faultsOf(on(part), day)).toEqual([]);
      expect(day.entries.map(({ title }) => title)).toEqual([
        part === 'cook' ? 'Step cook' : 'Step show',
      ]);
    }
  });
});

describe('300 random days that ask for all of this', () => {
  const days = Array.from({ length: 300 }, (_, seed) => {
    const file = randomKeptDay(seed);
    return { seed, file, day: planDay(file, { seed: 1, effort: 40 }) };
  });

  it('keep every rule where they are said to, and say what is broken where not', () => {
    const feasible = days.filter(({ day }) => day.status === 'feasible');
    const faults = feasible.flatMap(({ seed, file, day }) =>
      checkPlan(file, day).map((fault) => `day ${seed}: ${fault}`),
    );
    expect(faults).toEqual([]);
    // A share of days that ask for so much cannot be had; enough can.
    expect(feasible.length).toBeGreaterThan(100);
    for (const { day } of days.filter((each) => each.day.status === 'stuck')) {
      expect(day.broken.length).toBeGreaterThan(0);
      for (const { message } of day.broken) expect(message).not.toMatch(/A rule \(|undefined/);
      for (const words of day.clash) expect(words).not.toMatch(/^A rule|undefined/);
    }
  });

  it('ask for each rule again and again', () => {
    const of = (has: (file: EpisodeFile) => boolean) => days.filter(({ file }) => has(file)).length;
    const anyStep = (
      has: (step: EpisodeFile['episode']['segments'][number]['steps'][number]) => boolean,
    ) => of(({ episode }) => episode.segments.some(({ steps }) => steps.some(has)));
    const counts = [
      anyStep(({ contact }) => contact === 'rawAnimal'),
      anyStep(({ contact }) => contact === 'readyToEat'),
      anyStep(({ applianceId }) => applianceId !== null),
      anyStep(({ daylight }) => daylight),
      anyStep(({ restS }) => restS > 0),
      of(({ kitchen }) => kitchen.cameraChangeS !== null),
      of(({ kitchen }) => kitchen.counterPlaces !== null),
      of(({ episode }) => episode.segments.some(({ filmedWhen }) => filmedWhen !== null)),
      of(({ day }) => day?.segments.some(({ part }) => part !== 'all') === true),
    ];
    for (const count of counts) expect(count).toBeGreaterThan(60);
  });
});
