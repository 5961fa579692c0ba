import { describe, expect, test } from 'vitest';
import type { EpisodeFile } from '#lib/episode/schema';
import { propose, type Proposal } from '#lib/method/proposal';
import { readMethod } from '#lib/method/read-method';
import { LAST, stepsToAdd, type Chosen } from '#lib/method/steps-to-add';
import { RULE_NAMES, type RuleName } from '#lib/method/rules';
import { planDay } from '#lib/shoot/plan-day';
import { demoFile } from '../ui/page-support';
import { UNSAID_DAY_SEGMENT, UNSAID_STEP } from '#lib/episode/unsaid';

const DEMO = demoFile();
const OVENS = DEMO.kitchen.ovens;

function proposal(text: string, washUpS = 0): Proposal {
  const method = readMethod(text, 'EU');
  if (!method.ok) throw new Error(JSON.stringify(method.problems));
  return propose(method.value, { ovens: OVENS, segment: { washUpS }, region: 'EU' });
}

/** Everything as it is offered, but for rules that are switched off. */
function asOffered(offered: Proposal, off: readonly RuleName[] = []): Chosen {
  return {
    steps: offered.steps
      .filter(({ ticked }) => ticked)
      .map(({ key, lowS, usualS, highS, oven }) => {
        const ovenMilliC = oven?.milliC ?? null;
        return { key, lowS, usualS, highS, ovenMilliC, keepsContact: true };
      }),
    rules: new Map(
      offered.rules
        .filter(({ name }) => !off.includes(name))
        .map(({ name, usualS }) => [name, usualS]),
    ),
  };
}

const ruleNames = (text: string, washUpS = 0) =>
  proposal(text, washUpS).rules.map(({ name }) => name);
const BAKE =
  'Preheat the oven to 220 °C. Mix for 5 minutes. Bake for 40 minutes. Rest for 10 minutes.';

describe('which rules have something to add', () => {
  test('a long bake is looked at halfway; one that is turned anyway is not', () => {
    expect(ruleNames(BAKE, 60)).toEqual(['look']);
    expect(ruleNames('Bake at 180 °C for 29 minutes. Rest for 5 minutes.', 60)).toEqual([]);
    expect(
      ruleNames('Roast at 200 °C for 40 minutes, turning halfway. Rest for 5 minutes.', 60),
    ).toEqual(['turn']);
    expect(ruleNames('Fry for 40 minutes, turning once.', 60)).toEqual([]);
  });

  test('a rest is added where the text says none after the oven', () => {
    expect(ruleNames('Bake at 180 °C for 20 minutes. Serve.', 60)).toEqual(['rest']);
    expect(ruleNames('Bake at 180 °C for 20 minutes. Leave to cool.', 60)).toEqual([]);
    expect(ruleNames('Bake at 180 °C for 5 minutes. Serve.', 60)).toEqual([]);
    expect(ruleNames('Simmer for 20 minutes. Serve.', 60)).toEqual([]);
  });

  test('washing up is added only to a dish that has none', () => {
    expect(ruleNames('Simmer for 20 minutes.', 0)).toEqual(['washUp']);
    const has = proposal('Simmer for 20 minutes.', 720);
    expect(has.rules).toEqual([]);
    expect(has.shown.map(({ words }) => words)).toEqual([
      'This dish has 12 min of it already, and the plan finds their place before wrap.',
    ]);
  });

  test('each says what it does and where it comes from', () => {
    const raw = 'Season the duck and marinate it for 30 minutes.';
    const all = [BAKE, 'Roast at 200 °C for 40 minutes, turning once. Serve.', raw].flatMap(
      (text) => proposal(text).rules,
    );
    expect(new Set(all.map(({ name }) => name))).toEqual(new Set(RULE_NAMES));
    for (const { words, basis } of all) {
      expect(words.length).toBeGreaterThan(20);
      expect(basis).toMatch(/Common practice, no source\.$|^Said in the text\.$/);
    }
  });
});

test('heating the oven is the plan’s own: it is told, from the kitchen’s measure, and never a step', () => {
  const { shown, steps } = proposal(BAKE);
  expect(steps.map(({ title }) => title)).toEqual(['Mix', 'Bake', 'Rest']);
  expect(shown).toHaveLength(1);
  expect(shown[0]?.words).toMatch(
    /^The plan heats the oven before each step that needs it: .+ takes \d+ min from cold to 220 °C\. The text says it too \(“Preheat the oven to 220 °C”\); no step is added for it\.$/,
  );
  expect(shown[0]?.basis).toBe('Measured in your kitchen.');
});

test('what was read is told with its words, a guess as one, and what has no field in the note', () => {
  const { steps } = proposal(
    'Heat to 200C/180C fan. Air-fry at 190 °C for 12–14 minutes. Chop the dill. Bake at 160 °C fan for 20 minutes.',
  );
  const told = steps.map(({ found, note }) => [
    found.map(({ what, from }) => (from ? `${what} ← ${from}` : what)),
    note,
  ]);
  expect(told.slice(1)).toEqual([
    [
      ['12–14 min ← 12–14 minutes', 'in the air fryer', 'by itself', '190 °C ← 190 °C'],
      'in the air fryer, 190 °C',
    ],
    [['no minutes in the text: a guess', 'hands'], ''],
    [
      ['20 min ← 20 minutes', 'in the oven', 'by itself', '160 °C ← 160 °C fan'],
      'said as 160 °C fan',
    ],
  ]);
});

describe('what is added', () => {
  const ties = (text: string, hasLast = false, off: readonly RuleName[] = []) => {
    const offered = proposal(text, 60);
    const { steps, ties: all } = stepsToAdd(offered, asOffered(offered, off), hasLast);
    const title = (key: string) =>
      key === LAST ? LAST : (steps.find((step) => step.key === key)?.title ?? '?');
    return all.map(({ from, fromAnchor, to, minLagS, maxLagS }) => [
      title(from),
      fromAnchor,
      title(to),
      minLagS,
      maxLagS,
    ]);
  };

  test('steps follow each other, the first the dish’s last; a look falls within its bake', () => {
    expect(ties(BAKE, true)).toEqual([
      [LAST, 'end', 'Mix', 0, null],
      ['Mix', 'end', 'Bake', 0, null],
      ['Bake', 'start', 'Look in halfway: bake', 960, 1440],
      ['Bake', 'end', 'Rest', 0, null],
    ]);
    expect(ties(BAKE, false, ['look'])).toEqual([
      ['Mix', 'end', 'Bake', 0, null],
      ['Bake', 'end', 'Rest', 0, null],
    ]);
  });

  test('what is done meanwhile begins with the step before it, and the next waits for both', () => {
    expect(
      ties(
        'Simmer the barley for 30 minutes. Meanwhile, fry the onion for 5 minutes. Fold together.',
      ),
    ).toEqual([
      ['Simmer the barley', 'start', 'Fry the onion', 0, null],
      ['Simmer the barley', 'end', 'Fold together', 0, null],
      ['Fry the onion', 'end', 'Fold together', 0, null],
    ]);
  });

  test('a step that was left out takes its look and its ties with it', () => {
    const offered = proposal(BAKE, 60);
    const chosen = asOffered(offered);
    const { steps, ties: all } = stepsToAdd(
      offered,
      { ...chosen, steps: chosen.steps.filter(({ key }) => key !== '1') },
      false,
    );
    expect(steps.map(({ title }) => title)).toEqual(['Mix', 'Rest']);
    expect(all.map(({ from, to }) => [from, to])).toEqual([['0', '2']]);
  });

  test('what takes longer than a day is offered without its tick', () => {
    const [soak] = proposal('Soak the beans overnight. Boil for 40 minutes.').steps;
    expect(soak).toMatchObject({ ticked: false });
    expect(soak?.remark).toContain('evening before');
  });
});

test('the plan heats once, and looks in while it bakes', () => {
  const offered = proposal(BAKE);
  const add = stepsToAdd(offered, asOffered(offered), false);
  const [loaf] = DEMO.episode.segments.filter(({ kind }) => kind === 'recipe');
  if (!loaf || !DEMO.day) throw new Error('the demo has a dish and a day');
  const segment = {
    ...loaf,
    perishables: [],
    shots: [],
    washUpS: add.washUpS ?? 0,
    steps: add.steps.map(({ key, ovenMilliC, ...step }) => ({
      ...step,
      id: key,
      choose: null,
      oven: ovenMilliC === null ? null : { ovenId: null, milliC: ovenMilliC },
      restS: 0,
      onCamera: false,
      daylight: false,
      ...UNSAID_STEP,
    })),
  };
  const links = add.ties.map(({ from, to, ...rest }, index) => ({
    ...rest,
    id: `tie-${index}`,
    fromStepId: from,
    toStepId: to,
  }));
  const file: EpisodeFile = {
    ...DEMO,
    episode: { ...DEMO.episode, segments: [segment], links },
    day: {
      ...DEMO.day,
      pins: [],
      appointments: [],
      segments: [{ ...UNSAID_DAY_SEGMENT, id: 'd', segmentId: segment.id }],
    },
  };
  const plan = planDay(file, { seed: 1 });
  expect(plan.broken).toEqual([]);
  const at = (title: string) => plan.entries.find((entry) => entry.title === title);
  expect(plan.entries.filter(({ kind }) => kind === 'preheat')).toHaveLength(1);
  const [bake, look] = [at('Bake'), at('Look in halfway: bake')];
  expect(look?.startMin).toBeGreaterThanOrEqual((bake?.startMin ?? 0) + 16);
  expect(look?.endMin).toBeLessThan(bake?.endMin ?? 0);
  expect(at('Rest')?.startMin).toBeGreaterThanOrEqual(bake?.endMin ?? 0);
});
