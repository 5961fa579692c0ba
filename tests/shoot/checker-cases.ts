import type { CheckedFile, CheckedPlan } from './checker-data';
import {
  smallFile,
  smallPlan,
  withDay,
  withEntry,
  withLink,
  withMore,
  withOven,
  withSegment,
  withStep,
} from './small-day';

type Case = readonly [string, CheckedFile, CheckedPlan, readonly RegExp[]];

const lot = (change: object): CheckedFile => {
  const perishables = smallFile.episode.segments.flatMap((s) => s.perishables);
  return withSegment('pie', { perishables: perishables.map((p) => ({ ...p, ...change })) });
};
const clock = (change: object): CheckedPlan => ({
  ...smallPlan,
  lots: smallPlan.lots.map((l) => ({ ...l, ...change })),
});
const both = (step: object, id: string): readonly [CheckedFile, CheckedPlan] => [
  withStep(id, step),
  withEntry(id, step),
];
const noLinks: CheckedFile = {
  ...smallFile,
  episode: { ...smallFile.episode, links: [] },
};
const swapped = smallPlan.entries.map((e, i, all) => (i < 2 ? (all[1 - i] ?? e) : e));
const reversed = [...smallFile.day.segments].reverse();

/** Orders with one mistake each, and every fault that follows from it, in the checker's order. */
export const FAULTY: readonly Case[] = [
  ['a step left out', smallFile, withEntry('fry', null), [/^steps: "Fry" \(fry\) has 0 entries/]],
  [
    'a step carried out twice',
    smallFile,
    withMore('again', 545, 553, { stepId: 'fry', hands: true }),
    [/^steps: "Fry" \(fry\) has 2 entries/],
  ],
  [
    'a step of nobody',
    smallFile,
    withMore('odd', 546, 550, { stepId: 'odd' }),
    [/^steps: .*not filmed/],
  ],
  [
    'a step of another day',
    withDay({ segments: [{ segmentId: 'pie', part: 'all' }] }),
    smallPlan,
    [
      ...Array.from({ length: 4 }, () => /^steps: .*not filmed that day/),
      /^washing-up: "washStew".*no segment of that day/,
    ],
  ],
  [
    'hands kept quiet',
    smallFile,
    withEntry('mix', { hands: false }),
    [/^steps: "Mix".*does not state/],
  ],
  ['a step too short', smallFile, withEntry('fry', { startMin: 496 }), [/^length: "Fry".*7 min/]],
  [
    'a part of a minute dropped',
    smallFile,
    withEntry('bake', { startMin: 491 }),
    [/^length: .*19 min/, /^lots: /],
  ],
  [
    'shorter than may be chosen',
    smallFile,
    withEntry('simmer', { endMin: 512 }),
    [/^length: "Simmer"/],
  ],
  [
    'no time for a second of work',
    withStep('eatStew', { usualS: 1 }),
    withEntry('eatStew', { startMin: 585 }),
    [/^length: "Eat the stew".*0 min/],
  ],
  ['half minutes', smallFile, withEntry('preheat', { startMin: 480.5 }), [/^minutes: "preheat"/]],
  [
    'before the day starts',
    smallFile,
    withEntry('mix', { startMin: 479, endMin: 489 }),
    [/^start: "Mix"/, /^lots: /],
  ],
  [
    'before a pin',
    withDay({ pins: [{ stepId: 'fry', notBeforeMin: 496, notAfterMin: null }] }),
    smallPlan,
    [/^pin: "Fry"/],
  ],
  [
    'sooner than the least lag',
    smallFile,
    withEntry('gratin', { startMin: 516, endMin: 526 }),
    [/^least lag: .*is 1 min, at least 2 asked/],
  ],
  [
    'a least lag of 121 s',
    withLink('l5', { minLagS: 121 }),
    smallPlan,
    [/^least lag: .*at least 3 asked/],
  ],
  [
    'a greatest lag of 119 s',
    withLink('l5', { maxLagS: 119 }),
    smallPlan,
    [/^greatest lag: .*is 2 min, at most 1 allowed/],
  ],
  [
    'a greatest lag under a minute',
    withLink('l5', { maxLagS: 59 }),
    smallPlan,
    [/^greatest lag: .*at most 0 allowed/],
  ],
  [
    'a lag from start to end',
    withLink('l5', { fromAnchor: 'start', toAnchor: 'end', maxLagS: 23 * 60 }),
    smallPlan,
    [/^greatest lag: .*start of "Simmer".*end of "Brown.*is 24 min, at most 23/],
  ],
  [
    'two washings-up at once',
    smallFile,
    withEntry('washStew', { startMin: 535, endMin: 540 }),
    [/^hands: "washPie".*"washStew".*overlap/],
  ],
  [
    'hands during a call',
    smallFile,
    withEntry('washStew', { startMin: 558, endMin: 563 }),
    [/^hands: "washStew".*"Call".*overlap/],
  ],
  [
    'hands at two steps',
    noLinks,
    withEntry('fry', { startMin: 509, endMin: 517 }),
    [
      /^hands: "Fry".*"Show it hot"/,
      /^hands: "Fry".*"Eat the pie"/,
      /^burners: 2 in use at 509, the kitchen has 1/,
      /^burners: 2 in use at 510/,
    ],
  ],
  [
    'two steps on camera',
    ...both({ onCamera: true }, 'simmer'),
    [/^camera: .*"Show it hot".*overlap/],
  ],
  ['two pans on one burner', ...both({ burners: 1 }, 'show'), [/^burners: 2 in use at 510/]],
  [
    'an oven that is not there',
    smallFile,
    withEntry('gratin', { ovenId: 'x' }),
    [/^oven: .*no oven of/],
  ],
  [
    'another oven than named',
    withStep('gratin', { oven: { ovenId: 'x', milliC: 180_000 } }),
    smallPlan,
    [/^oven: .*not in the oven it names/],
  ],
  [
    'an oven for nothing',
    smallFile,
    withEntry('fry', { ovenId: 'oven' }),
    [/^oven: "Fry".*without need/],
  ],
  [
    'another temperature stated',
    smallFile,
    withEntry('gratin', { milliC: 170_000 }),
    [/^temperature: .*does not state 180 °C/],
  ],
  [
    'an oven that does not get so hot',
    withOven({ mostMilliC: 190_000 }),
    smallPlan,
    [/^temperature: .* asks for more than Oven gets$/],
  ],
  ['more trays than racks', withOven({ racks: 1 }), smallPlan, [/^racks: 2 in use in Oven at 517/]],
  [
    'two temperatures at once',
    noLinks,
    withEntry('gratin', { startMin: 500, endMin: 510 }),
    [
      /^racks: 3 in use in Oven at 500/,
      /^temperature: .*two temperatures at once/,
      /^changeover: .*has -10 min and needs 5/,
      /^coolDown: .*no coolDown entry of 5 min/,
    ],
  ],
  [
    'a cold oven',
    withOven({ heatSPerC: 4 }),
    smallPlan,
    [
      /^changeover: Oven from 20 °C to 200 °C.*has 10 min and needs 12/,
      /^preheat: .*no preheat entry of 12 min/,
    ],
  ],
  [
    'too short a change by measure',
    withOven({
      changes: [{ fromMilliC: 200_000, toMilliC: 180_000, seconds: 421 }],
    }),
    smallPlan,
    [/^changeover: .*has 7 min and needs 8/, /^coolDown: /],
  ],
  [
    'too short a change by rate',
    withOven({ changes: [] }),
    smallPlan,
    [/^changeover: .*needs 20/, /^coolDown: /],
  ],
  ['no preheating', smallFile, withEntry('preheat', null), [/^preheat: Oven from 20 °C to 200 °C/]],
  [
    'short preheating',
    smallFile,
    withEntry('preheat', { startMin: 482 }),
    [/^preheat: .*of 9 min/],
  ],
  [
    'cooling called heating',
    smallFile,
    withEntry('coolDown', { kind: 'preheat' }),
    [/^coolDown: /],
  ],
  [
    'heating around a dish',
    smallFile,
    withMore('more', 495, 500, { kind: 'preheat', ovenId: 'oven' }),
    [/^preheat: "more".*runs while "Bake the pie"/],
  ],
  [
    'heating by hand',
    smallFile,
    withEntry('coolDown', { hands: true }),
    [/^hands: /, /^coolDown: .*takes hands/],
  ],
  [
    'too long unchilled',
    lot({ limitS: 299 }),
    clock({ limitMin: 4 }),
    [/^perishable: Filling stands 5 min, 4 allowed/],
  ],
  ['a clock that is wrong', smallFile, clock({ minutes: 4 }), [/^lots: .*5 min, the plan says 4/]],
  ['a limit that is wrong', smallFile, clock({ limitMin: 120 }), [/^lots: .*another limit/]],
  ['no clock', smallFile, { ...smallPlan, lots: [] }, [/^lots: Filling has 0 clocks/]],
  ['no washing-up', smallFile, withEntry('washStew', null), [/^washing-up: Stew has 0 entries/]],
  [
    'washing-up too short',
    withSegment('stew', { washUpS: 301 }),
    smallPlan,
    [/^washing-up: "washStew".*should take 6 min/],
  ],
  [
    'washing-up too soon',
    withStep('eatStew', { role: 'taste' }),
    smallPlan,
    [/^washing-up: "washStew".*before Stew is done at 585/],
  ],
  [
    'washing-up by itself',
    smallFile,
    withEntry('washStew', { hands: false }),
    [/^washing-up: .*does not say so/],
  ],
  [
    'meals too close',
    withDay({ mealGapMin: 61 }),
    smallPlan,
    [/^meals: .*60 min after the last, 61/],
  ],
  [
    'meals out of viewing order',
    withDay({ segments: reversed }),
    smallPlan,
    [/^meals: "Eat the pie".*before "Eat the stew".*viewing order/],
  ],
  [
    'meals too close on a packed day',
    withDay({ kind: 'packed', segments: reversed, mealGapMin: 61 }),
    { ...smallPlan, kind: 'packed' },
    [/^meals: .*60 min after the last, 61/],
  ],
  [
    'an appointment moved',
    smallFile,
    withEntry('call', { startMin: 561 }),
    [/^appointment: "Call" 560–570 has no entry/, /^appointment: .*none of that day's/],
  ],
  ['an appointment left out', smallFile, withEntry('call', null), [/^appointment: "Call" 560–570/]],
  ['a wrap that is wrong', smallFile, { ...smallPlan, wrapMin: 586 }, [/^wrap: the plan says 586/]],
  ['a wrap too late', withDay({ wrapByMin: 584 }), smallPlan, [/^wrap: 585 is later than 584/]],
  ['out of order', smallFile, { ...smallPlan, entries: swapped }, [/^order: "Mix"/]],
  ['an id used twice', smallFile, withEntry('washStew', { id: 'washPie' }), [/^ids: washPie/]],
  ['no reason given', smallFile, withEntry('simmer', { why: ' ' }), [/^why: "Simmer"/]],
  ['called stuck', smallFile, { ...smallPlan, status: 'stuck' }, [/^status: stuck with 0/]],
  [
    'called feasible with a broken rule',
    smallFile,
    { ...smallPlan, broken: [{}] },
    [/^status: feas/],
  ],
  ['of another day', smallFile, { ...smallPlan, dayId: 'other' }, [/^day: /]],
  ['no filming day', { ...smallFile, day: null }, smallPlan, [/^day: the file has no filming day/]],
];

/** Orders and days that differ from the small one and keep every rule. */
export const SOUND: readonly (readonly [string, CheckedFile, CheckedPlan])[] = [
  ['as written', smallFile, smallPlan],
  ['a length that may be chosen', smallFile, withEntry('simmer', { endMin: 513 })],
  [
    'a step of no length',
    withStep('eatStew', { usualS: 0 }),
    withEntry('eatStew', { startMin: 585 }),
  ],
  [
    'packed, in another order than viewed',
    withDay({ kind: 'packed', segments: reversed }),
    { ...smallPlan, kind: 'packed' },
  ],
  [
    'no meal gap for what is not eaten',
    withSegment('pie', { eaten: { num: 0, den: 1 } }),
    smallPlan,
  ],
  [
    'no clock for what is thrown away',
    lot({ limitS: 60, thrownAway: true }),
    { ...smallPlan, lots: [] },
  ],
  [
    'a measured change that just fits',
    withOven({
      changes: [{ fromMilliC: 200_000, toMilliC: 180_000, seconds: 241 }],
    }),
    smallPlan,
  ],
];
