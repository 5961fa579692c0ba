import { describe, expect, test } from 'vitest';
import type { Segment } from '#lib/episode/schema';
import type { Step, StepLink } from '#lib/episode/step-schema';
import { defaultDay } from '#lib/shoot/default-day';
import type { PlanEntry } from '#lib/shoot/plan';
import { isTooLong, linkWords, placeWords, stepWords } from '#lib/shoot/step-words';
import { demoFile } from '../ui/page-support';
import { UNSAID_STEP } from '#lib/episode/unsaid';

const demo = demoFile();
const OVENS = [{ id: 'o1', name: 'Big oven' }];
const KITCHEN = { ovens: OVENS, appliances: [{ id: 'a1', name: 'Air fryer' }] };

const step: Step = {
  ...UNSAID_STEP,
  id: 's1',
  title: 'Bake',
  role: 'cook',
  lowS: 360,
  usualS: 480,
  highS: 720,
  choose: null,
  hands: true,
  burners: 0,
  racks: 0,
  oven: null,
  coreMilliC: null,
  restS: 0,
  onCamera: false,
  daylight: false,
  note: '',
};

describe('a step in a few words', () => {
  test.each<[string, Partial<Step>, string[]]>([
    ['a range', {}, ['6–8–12 min', 'hands']],
    ['one length', { lowS: 480, highS: 480 }, ['8 min', 'hands']],
    ['odd seconds', { lowS: 20, usualS: 20, highS: 20 }, ['20 s', 'hands']],
    [
      'an oven',
      { hands: false, racks: 2, oven: { ovenId: 'o1', milliC: 180_000 }, coreMilliC: 74_000 },
      ['6–8–12 min', 'by itself', 'Big oven 180 °C', '2 racks', '74 °C inside'],
    ],
    [
      'a choice',
      { choose: { minS: 720, maxS: 900 }, burners: 1, restS: 300 },
      ['6–8–12 min', 'hands', 'may take 12–15 min', '1 burner', 'rests 5 min'],
    ],
    [
      'an appliance, the counter and what is touched',
      { hands: false, applianceId: 'a1', counter: 2, contact: 'rawAnimal' },
      [
        '6–8–12 min',
        'by itself',
        'Air fryer',
        '2 places on the counter',
        'touches raw meat, poultry, fish or egg',
      ],
    ],
    [
      'the evening before, with the camera moved',
      { evening: true, onCamera: true, cameraSetUp: 'over the board', applianceId: 'gone' },
      ['6–8–12 min', 'hands', 'the evening before', 'camera', 'camera over the board'],
    ],
    ['a camera', { onCamera: true, daylight: true }, ['6–8–12 min', 'hands', 'camera, daylight']],
  ])('%s', (_name, change, words) => {
    expect(stepWords({ ...step, ...change }, KITCHEN, 'EU')).toEqual(words);
  });

  // 350 °F is 176.667 °C: NIST SP 811, Appendix B.9 [M].
  test('in the US degrees are Fahrenheit', () => {
    const baked = { ...step, oven: { ovenId: null, milliC: 176_667 } };
    expect(stepWords(baked, KITCHEN, 'US')).toContain('oven 350 °F');
  });
});

test('where an entry takes place', () => {
  const entry: PlanEntry = {
    id: 'e',
    kind: 'step',
    stepId: 's1',
    segmentId: 'g',
    title: 'Bake',
    startMin: 0,
    endMin: 10,
    hands: true,
    onCamera: false,
    ovenId: 'o1',
    milliC: 220_000,
    racks: 1,
    burners: 2,
    why: '',
  };
  expect(placeWords(entry, OVENS, 'EU', null)).toBe('hands + Big oven 220 °C + 2 burners');
  const alone = { ...entry, hands: false, ovenId: null, milliC: null, burners: 0 };
  expect(placeWords(alone, OVENS, 'EU', null)).toBe('by itself');
  expect(placeWords(alone, OVENS, 'EU', 'Microwave')).toBe('Microwave');
});

describe('a link in a sentence', () => {
  const link: StepLink = {
    id: 'l',
    fromStepId: 'Mix',
    toStepId: 'Shape',
    fromAnchor: 'end',
    toAnchor: 'start',
    minLagS: 600,
    maxLagS: null,
    reason: 'it must rest',
  };
  test.each<[Partial<StepLink>, string]>([
    [{}, 'Shape starts at least 10 min after Mix: it must rest'],
    [{ maxLagS: 1200, reason: '' }, 'Shape starts at least 10 min and at most 20 min after Mix'],
    [{ minLagS: 0 }, 'Shape starts after Mix: it must rest'],
    [
      { fromAnchor: 'start', toAnchor: 'end', minLagS: null, maxLagS: 60 },
      'Shape ends at most 1 min after the start of Mix: it must rest',
    ],
  ])('%j', (change, sentence) => {
    expect(linkWords({ ...link, ...change }, (id) => id)).toBe(sentence);
  });
});

test('a lot is too long only beyond its limit', () => {
  const lot = { perishableId: 'p', segmentId: 's', name: 'milk', minutes: 120, limitMin: 120 };
  expect(isTooLong(lot)).toBe(false);
  expect(isTooLong({ ...lot, minutes: 121 })).toBe(true);
});

describe('the day that an episode begins with', () => {
  const withSegments = (segments: readonly Segment[]) => ({
    episode: { ...demo.episode, segments: [...segments] },
  });

  test('a day of eating is as lived, one dish is packed; every segment is filmed in order', () => {
    const day = defaultDay(demo, '2026-12-12');
    expect(day).toMatchObject({ date: '2026-12-12', kind: 'asLived', startMin: 540 });
    expect(day.segmentIds).toEqual(demo.episode.segments.map(({ id }) => id));
    const [dish] = demo.episode.segments.filter(({ recipe }) => recipe !== null);
    expect(defaultDay(withSegments(dish ? [dish] : []), '2026-12-12').kind).toBe('packed');
    expect(defaultDay(withSegments([]), '2026-12-12').segmentIds).toEqual([]);
  });
});
