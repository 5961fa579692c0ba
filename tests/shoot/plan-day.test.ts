import { describe, expect, it } from 'vitest';
import type { Oven } from '#lib/episode/kitchen-schema';
import type { EpisodeFile } from '#lib/episode/schema';
import type { PlanEntry, ShootPlan } from '#lib/shoot/plan';
import { planDay } from '#lib/shoot/plan-day';
import { checkPlan } from './checker';
import { randomDay, randomDayWithWitness } from './random-day';
import { dayFile, link, oven, segment, step } from './made-day';
import { UNSAID_DAY_SEGMENT } from '#lib/episode/unsaid';

/** Days planned by rules alone, which takes milliseconds, and days searched as far as a small effort goes. */
const DAYS = { byRules: 1000, searched: 150 } as const;
const SMALL = 8;
const plan = (file: EpisodeFile): ShootPlan => planDay(file, { seed: 1 });
const entryOf = (found: ShootPlan, stepId: string): PlanEntry => {
  const entry = found.entries.find((candidate) => candidate.stepId === stepId);
  if (entry === undefined) throw new Error(`No entry for ${stepId}`);
  return entry;
};
const startOf = (found: ShootPlan, stepId: string): number => entryOf(found, stepId).startMin;

describe('random days', () => {
  it.each([
    ['by rules', DAYS.byRules, 0],
    ['searched', DAYS.searched, SMALL],
  ])(
    '%s, %i seeded days that can be kept are kept',
    (_, days, effort) => {
      const stuck: number[] = [];
      const faults: string[] = [];
      const later: number[] = [];
      for (let seed = 1; seed <= days; seed += 1) {
        const { file, witness } = randomDayWithWitness(seed);
        const found = planDay(file, { seed: 1, effort });
        if (found.status !== 'feasible') stuck.push(seed);
        faults.push(...checkPlan(file, found).map((fault) => `day ${seed}: ${fault}`));
        if (found.wrapMin > witness.wrapMin) later.push(seed);
      }
      expect(faults).toEqual([]);
      expect(stuck).toEqual([]);
      // The generator's own plan does one segment after another: no plan by rules should end after it.
      expect(later).toEqual([]);
    },
    300_000,
  );

  it('the same day and seed give the same plan', () => {
    for (let seed = 1; seed <= 30; seed += 1) {
      const file = randomDay(seed);
      const again = structuredClone(file);
      const options = { seed, effort: SMALL };
      expect(planDay(file, options)).toEqual(planDay(again, options));
    }
  });

  it('any seed keeps the rules', () => {
    for (let seed = 1; seed <= 60; seed += 1) {
      const file = randomDay(3000 + seed);
      expect(checkPlan(file, planDay(file, { seed: seed * 7919, effort: SMALL }))).toEqual([]);
    }
  });

  it('a day without room comes back stuck, whole, and with the rules named that the checker misses', () => {
    let seen = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const file = randomDay(seed);
      if (file.day === null) continue;
      const tight: EpisodeFile = {
        ...file,
        day: { ...file.day, wrapByMin: file.day.startMin + 30 },
      };
      const found = planDay(tight, { seed: 1, effort: SMALL });
      const faults = checkPlan(tight, found);
      expect(found.status).toBe('stuck');
      expect(found.broken.map(({ rule }) => rule)).toEqual(['wrap']);
      expect(faults.every((fault) => fault.startsWith('wrap:'))).toBe(true);
      expect(faults).toHaveLength(1);
      seen += 1;
    }
    expect(seen).toBe(60);
  });
});

describe('an oven that does not get so hot as a step asks', () => {
  const bake = (milliC: number, ovenId: string | null = null) =>
    segment('a', [step('bake', { oven: { ovenId, milliC }, racks: 1 })]);
  const ovens = [
    { ...oven, id: 'small', name: 'Small oven', mostMilliC: 230_000 },
    { ...oven, id: 'big', name: 'Big oven', mostMilliC: 280_000 },
  ];
  const planned = (day: ReturnType<typeof bake>, kitchen: Oven[] = ovens) => {
    const file = dayFile([day], [], {}, { ovens: kitchen });
    const found = plan(file);
    const told = found.broken.map(({ rule, message }) => `${rule}: ${message}`);
    expect(checkPlan(file, found)).toHaveLength(told.length);
    return { found, told };
  };

  it('is not chosen where another gets hot enough', () => {
    const { found, told } = planned(bake(260_000));
    expect(told).toEqual([]);
    expect(entryOf(found, 'bake').ovenId).toBe('big');
  });

  it('is told with those that do where the step names it, and no plan is offered', () => {
    const { found, told } = planned(bake(260_000, 'small'));
    expect(found.status).toBe('stuck');
    expect(told).toEqual([
      'oven: Step bake asks for 260 °C, and Small oven gets no hotter than 230 °C: choose Big oven.',
    ]);
  });

  it('is told with how hot each gets where none does', () => {
    expect(planned(bake(290_000)).told).toEqual([
      'oven: Step bake asks for 290 °C, and no oven of this kitchen gets so hot (Small oven 230 °C, Big oven 280 °C).',
    ]);
  });

  it('has no limit where nobody said one', () => {
    expect(planned(bake(300_000), [oven]).told).toEqual([]);
  });
});

describe('a small day', () => {
  it('preheats before the first use, as late as possible and without hands', () => {
    const file = dayFile([
      segment('a', [step('bake', { oven: { ovenId: null, milliC: 200_000 }, racks: 1 })]),
    ]);
    const found = plan(file);
    // 180 °C up at 6 s each: 1,080 s, 18 min.
    expect(found.entries.map((e) => [e.kind, e.startMin, e.endMin, e.hands])).toEqual([
      ['preheat', 540, 558, false],
      ['step', 558, 568, false],
    ]);
    expect(entryOf(found, 'bake')).toMatchObject({ ovenId: 'oven', milliC: 200_000 });
  });

  it('takes a measured change for the rates, and shares the oven at one temperature', () => {
    const at = (milliC: number) => ({ oven: { ovenId: null, milliC }, racks: 1 });
    const measured = {
      ...oven,
      changes: [
        { id: 'm1', fromMilliC: 20_000, toMilliC: 200_000, seconds: 301 },
        { id: 'm2', fromMilliC: 200_000, toMilliC: 150_000, seconds: 120 },
      ],
    };
    const file = dayFile(
      [
        segment('a', [
          step('one', at(200_000)),
          step('two', at(200_000)),
          step('low', at(150_000)),
        ]),
      ],
      [link('one', 'low', 0, null)],
      {},
      { ovens: [measured] },
    );
    const found = plan(file);
    expect(startOf(found, 'one')).toBe(546);
    expect(startOf(found, 'two')).toBe(546);
    expect(found.entries.find((e) => e.kind === 'coolDown')).toMatchObject({
      startMin: 556,
      endMin: 558,
      milliC: 150_000,
    });
    expect(startOf(found, 'low')).toBe(558);
  });

  it('fills the waiting of one dish with the work of the next', () => {
    const hands = { hands: true };
    const file = dayFile(
      [
        segment('a', [
          step('mix', hands),
          step('rest', { role: 'wait', usualS: 3600 }),
          step('shape', hands),
        ]),
        segment('b', [step('cut', { ...hands, usualS: 2400 })]),
      ],
      [link('mix', 'rest', 0, 0), link('rest', 'shape', 0, null)],
    );
    const found = plan(file);
    expect(found.wrapMin).toBe(540 + 10 + 60 + 10);
    expect(startOf(found, 'cut')).toBeGreaterThanOrEqual(startOf(found, 'rest'));
    expect(entryOf(found, 'cut').endMin).toBeLessThanOrEqual(entryOf(found, 'rest').endMin);
  });

  it('as lived: meals in viewing order and apart, the work for the later one in between', () => {
    const eats = (id: string) =>
      segment(
        id,
        [step(`${id}-cook`, { hands: true }), step(`${id}-eat`, { role: 'eat', hands: true })],
        {
          washUpS: 301,
        },
      );
    const links = ['a', 'b'].map((id) => link(`${id}-cook`, `${id}-eat`, 0, 1800));
    const file = dayFile([eats('a'), eats('b')], links, { kind: 'asLived', mealGapMin: 180 });
    const found = plan(file);
    expect(startOf(found, 'a-eat')).toBe(550);
    expect(startOf(found, 'b-eat')).toBe(550 + 180);
    expect(entryOf(found, 'b-eat').why).toContain('3 h after the start of Step a-eat');
    expect(checkPlan(file, found)).toEqual([]);
    // 301 s of washing-up take 6 whole minutes; they can be done before the last meal is eaten.
    const wash = found.entries.filter((e) => e.kind === 'washUp');
    expect(wash.map((e) => e.endMin - e.startMin)).toEqual([6, 6]);
  });

  it('packed: either meal may come first, still apart', () => {
    const eats = (id: string) => segment(id, [step(`${id}-eat`, { role: 'eat', hands: true })]);
    const file = dayFile([eats('a'), eats('b')], [], {
      mealGapMin: 90,
      pins: [{ id: 'pin', stepId: 'a-eat', notBeforeMin: 600, notAfterMin: null }],
    });
    const found = plan(file);
    expect(startOf(found, 'b-eat')).toBe(540);
    expect(startOf(found, 'a-eat')).toBe(630);
    expect(checkPlan(file, found)).toEqual([]);
  });

  it('takes food out late rather than early, and states its minutes', () => {
    const lot = {
      id: 'lot',
      name: 'Turkey',
      limitS: 7200,
      thrownAway: false,
      spans: [
        {
          fromStepId: 'out',
          fromAnchor: 'start' as const,
          toStepId: 'mix',
          toAnchor: 'end' as const,
        },
      ],
    };
    const steps = [step('out', { usualS: 60, hands: true }), step('mix', { hands: true })];
    const file = dayFile(
      [segment('a', steps, { perishables: [lot] })],
      [link('out', 'mix', 0, null)],
      {
        pins: [{ id: 'pin', stepId: 'mix', notBeforeMin: 720, notAfterMin: null }],
      },
    );
    const found = plan(file);
    expect(found.lots).toEqual([
      { perishableId: 'lot', segmentId: 'a', name: 'Turkey', minutes: 11, limitMin: 120 },
    ]);
    expect(entryOf(found, 'out').why).toContain('Turkey stands out less');
  });

  it('works around an appointment that takes hands, and through one that does not', () => {
    const call = (hands: boolean) => ({
      appointments: [{ id: 'call', title: 'A call', startMin: 545, endMin: 575, hands }],
    });
    const steps = [segment('a', [step('cut', { hands: true })])];
    const around = plan(dayFile(steps, [], call(true)));
    expect(startOf(around, 'cut')).toBe(575);
    expect(entryOf(around, 'cut').why).toBe('hands free at 09:35, after A call');
    expect(startOf(plan(dayFile(steps, [], call(false))), 'cut')).toBe(540);
  });

  it('gives each of two temperatures that must meet an oven of its own', () => {
    const second = { ...oven, id: 'second', name: 'Second oven' };
    const at = (milliC: number) => ({ oven: { ovenId: null, milliC }, racks: 1 });
    const file = dayFile(
      [segment('a', [step('hot', at(220_000)), step('low', at(120_000))])],
      [link('hot', 'low', 0, 0, { fromAnchor: 'start' })],
      {},
      { ovens: [oven, second] },
    );
    const found = plan(file);
    expect(checkPlan(file, found)).toEqual([]);
    expect(entryOf(found, 'hot').ovenId).not.toBe(entryOf(found, 'low').ovenId);
  });

  it('a length that may be chosen lies in its range', () => {
    const file = dayFile(
      [
        segment('a', [
          step('bake', { usualS: 780, choose: { minS: 720, maxS: 900 } }),
          step('next'),
        ]),
      ],
      [
        link('bake', 'next', 0, 0),
        link('bake', 'next', 900, null, { id: 'late', fromAnchor: 'start' }),
      ],
    );
    const { startMin, endMin } = entryOf(plan(file), 'bake');
    expect(endMin - startMin).toBe(15);
  });

  it('a segment listed twice is filmed once', () => {
    const file = dayFile([segment('a', [step('one')])], [], {
      segments: [
        { ...UNSAID_DAY_SEGMENT, id: 'on', segmentId: 'a' },
        { ...UNSAID_DAY_SEGMENT, id: 'again', segmentId: 'a', pickup: true },
      ],
    });
    expect(plan(file).entries).toHaveLength(1);
  });

  it('a day without segments wraps when it starts', () => {
    expect(plan(dayFile([]))).toMatchObject({ status: 'feasible', wrapMin: 540, entries: [] });
  });

  it('refuses a file without a filming day', () => {
    expect(() => plan({ ...dayFile([]), day: null })).toThrow('no filming day');
  });
});

describe('a day that cannot be kept', () => {
  const rules = (file: EpisodeFile) => {
    const found = plan(file);
    const steps = file.episode.segments.flatMap((s) => s.steps);
    // Never blank: every step has its place even so.
    for (const { id } of steps) expect(entryOf(found, id).why).not.toBe('');
    expect(found.status).toBe('stuck');
    expect(checkPlan(file, found).length).toBeGreaterThan(0);
    return found.broken;
  };

  it('two links that contradict each other: one is told, with both numbers', () => {
    const file = dayFile(
      [segment('a', [step('bake'), step('show')])],
      [
        link('bake', 'show', 3600, null, { id: 'l1', reason: 'must cool' }),
        link('bake', 'show', null, 600, { id: 'l2', reason: 'shown hot' }),
      ],
    );
    const [broken, ...others] = rules(file);
    expect(others).toEqual([]);
    expect(broken).toMatchObject({ rule: 'link', stepIds: ['bake', 'show'] });
    expect(broken?.message).toBe(
      'The start of Step show should come at most 10 min after the end of Step bake (shown hot); here it comes 1 h after it.',
    );
  });

  it('more burners than there are', () => {
    const [broken] = rules(dayFile([segment('a', [step('fry', { burners: 3 })])]));
    expect(broken).toMatchObject({ rule: 'burners', stepIds: ['fry'] });
  });

  it('more racks than the oven has', () => {
    const given = { oven: { ovenId: null, milliC: 200_000 }, racks: 3 };
    const [broken] = rules(dayFile([segment('a', [step('bake', given)])]));
    expect(broken).toMatchObject({ rule: 'racks', stepIds: ['bake'] });
  });

  it('an oven in a kitchen without one', () => {
    const given = { oven: { ovenId: null, milliC: 200_000 } };
    const file = dayFile([segment('a', [step('bake', given)])], [], {}, { ovens: [] });
    const [broken] = rules(file);
    expect(broken).toMatchObject({ rule: 'oven', stepIds: ['bake'] });
  });

  it('two appointments that take the same hands', () => {
    const call = { startMin: 600, endMin: 660, hands: true };
    const file = dayFile([segment('a', [step('one')])], [], {
      appointments: [
        { id: 'a', title: 'Call', ...call },
        { id: 'b', title: 'Parcel', ...call, startMin: 650, endMin: 655 },
      ],
    });
    const [broken] = rules(file);
    expect(broken?.message).toBe('Call and Parcel overlap, and both take your hands.');
  });

  it('a lot that must stand longer than it may', () => {
    const span = { fromAnchor: 'end' as const, toAnchor: 'start' as const };
    const lot = {
      id: 'lot',
      name: 'Cream',
      limitS: 3600,
      thrownAway: false,
      spans: [{ fromStepId: 'out', toStepId: 'use', ...span }],
    };
    const file = dayFile(
      [segment('a', [step('out'), step('use')], { perishables: [lot] })],
      [link('out', 'use', 5400, null)],
    );
    const [broken] = rules(file);
    expect(broken?.message).toContain('Cream stands unchilled for 1 h 30 min; at most 1 h');
    const kept = dayFile(
      [segment('a', [step('out'), step('use')], { perishables: [{ ...lot, thrownAway: true }] })],
      [link('out', 'use', 5400, null)],
    );
    // For the picture only and thrown away: it has no clock.
    expect(plan(kept)).toMatchObject({ status: 'feasible', lots: [] });
  });
});
