import type { FATES, FilmingDay } from '#lib/episode/day-schema';
import type { Appliance, Oven } from '#lib/episode/kitchen-schema';
import type { Episode, Segment } from '#lib/episode/schema';
import type { Perishable, Step, StepLink } from '#lib/episode/step-schema';
import { HOT_AIR_MILLI_C, timeOutLimitS } from '#lib/safety/time-limits';
import { clockText, degreesText } from '#lib/shoot/day-words';
import type { LotClock, PlanEntry } from '#lib/shoot/plan';
import { minutesSaid, minutesTyped } from '#lib/units/read-typed';
import { pinTimeWords } from '#lib/shoot/pins';

/** What the hands touch, on screen. */
export const CONTACT_WORDS: Readonly<Record<NonNullable<Step['contact']>, string>> = {
  rawAnimal: 'raw meat, poultry, fish or egg',
  readyToEat: 'food that is eaten as it is',
};

/** When a segment is filmed, on screen. */
export const FILMED_WORDS: Readonly<Record<NonNullable<Segment['filmedWhen']>, string>> = {
  beforeDirty: 'before anything is dirty',
  afterReady: 'after everything is ready',
};

/** What of a segment is done on a day, on screen. */
export const PART_WORDS: Readonly<Record<FilmingDay['segments'][number]['part'], string>> = {
  all: 'all of it',
  cook: 'only its cooking',
  film: 'only its shots, cooked before',
};

/** What becomes of a dish, on screen. */
export const FATE_WORDS: Readonly<Record<(typeof FATES)[number], string>> = {
  eaten: 'eaten',
  kept: 'kept',
  givenAway: 'given away',
  thrownAway: 'thrown away',
};

/**
 * What of a segment is done on a day, when it is filmed and what becomes of its food:
 * `'all of it, filmed before anything is dirty, its food is kept'`; what nobody said is left out.
 */
export function onDayWords(
  { part, fate }: Pick<FilmingDay['segments'][number], 'part' | 'fate'>,
  { filmedWhen }: Pick<Segment, 'filmedWhen'>,
): string {
  return [
    PART_WORDS[part],
    ...(filmedWhen ? [`filmed ${FILMED_WORDS[filmedWhen]}`] : []),
    ...(fate ? [`its food is ${FATE_WORDS[fate]}`] : []),
  ].join(', ');
}

/** What a step is, on screen. */
export const ROLE_WORDS: Readonly<Record<Step['role'], string>> = {
  prep: 'prepare',
  cook: 'cook',
  wait: 'wait',
  shoot: 'shoot',
  talk: 'talk',
  taste: 'taste',
  eat: 'eat',
  wash: 'wash up',
};

/**
 * What a step takes, in a few words each: its minutes, whose they are, where it runs, inside temperature, what
 * the hands touch, and where the camera stands. `stepWords(step, kitchen, 'EU')` → `['6–8–12 min', 'hands', 'camera']`.
 */
export function stepWords(
  step: Step,
  kitchen: {
    readonly ovens: readonly Pick<Oven, 'id' | 'name'>[];
    readonly appliances: readonly Pick<Appliance, 'id' | 'name'>[];
  },
  region: Episode['region'],
): string[] {
  const words = [durationWords(step), step.hands ? 'hands' : 'by itself'];
  if (step.evening) words.push('the evening before');
  if (step.choose) {
    const { minS, maxS } = step.choose;
    words.push(`may take ${minutesTyped(minS)}–${minutesSaid(maxS)}`);
  }
  if (step.burners > 0) words.push(counted(step.burners, 'burner'));
  if (step.oven) {
    const { ovenId, milliC } = step.oven;
    const name = kitchen.ovens.find((oven) => oven.id === ovenId)?.name ?? 'oven';
    words.push(`${name} ${degreesText(milliC, region)}`);
  }
  if (step.racks > 0) words.push(counted(step.racks, 'rack'));
  const appliance = kitchen.appliances.find(({ id }) => id === step.applianceId);
  if (appliance) words.push(appliance.name);
  if (step.counter > 0)
    words.push(counted(step.counter, 'place on the counter', 'places on the counter'));
  if (step.contact) words.push(`touches ${CONTACT_WORDS[step.contact]}`);
  if (step.coreMilliC !== null) words.push(`${degreesText(step.coreMilliC, region)} inside`);
  if (step.restS > 0) words.push(`rests ${minutesSaid(step.restS)}`);
  if (step.onCamera) words.push(step.daylight ? 'camera, daylight' : 'camera');
  if (step.cameraSetUp !== '') words.push(`camera ${step.cameraSetUp}`);
  return words;
}

/** Shortest, usual and longest: `'6–8–12 min'`, or one number where they are the same. */
export function durationWords({
  lowS,
  usualS,
  highS,
}: Pick<Step, 'lowS' | 'usualS' | 'highS'>): string {
  if (lowS === usualS && usualS === highS) return minutesSaid(usualS);
  return `${minutesTyped(lowS)}–${minutesTyped(usualS)}–${minutesSaid(highS)}`;
}

function counted(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}

/**
 * Where an entry of the plan takes place: `'hands'`, `'The one oven 220 °C'`, `'Microwave'`, `'by itself'`, several with a
 * plus.
 * @param appliance the name of the one that it runs in
 */
export function placeWords(
  entry: PlanEntry,
  ovens: readonly Pick<Oven, 'id' | 'name'>[],
  region: Episode['region'],
  appliance: string | null,
): string {
  const oven = ovens.find(({ id }) => id === entry.ovenId);
  const heat = entry.milliC === null ? '' : ` ${degreesText(entry.milliC, region)}`;
  const words = [
    ...(entry.hands ? ['hands'] : []),
    ...(oven ? [`${oven.name}${heat}`] : []),
    ...(entry.burners > 0 ? [counted(entry.burners, 'burner')] : []),
    ...(appliance === null ? [] : [appliance]),
  ];
  return words.length === 0 ? 'by itself' : words.join(' + ');
}

/** A link in a sentence: `'Shape the loaf starts at least 10 min after the end of Mix: the mix must rest'`. */
export function linkWords(link: StepLink, titleOf: (stepId: string) => string): string {
  const least = link.minLagS ? [`at least ${minutesSaid(link.minLagS)}`] : [];
  const most = link.maxLagS === null ? [] : [`at most ${minutesSaid(link.maxLagS)}`];
  const lag = [...least, ...most].join(' and ');
  const does = link.toAnchor === 'start' ? 'starts' : 'ends';
  const from = link.fromAnchor === 'start' ? 'the start of ' : '';
  const after = lag === '' ? 'after' : `${lag} after`;
  const reason = link.reason === '' ? '' : `: ${link.reason}`;
  return `${titleOf(link.toStepId)} ${does} ${after} ${from}${titleOf(link.fromStepId)}${reason}`;
}

/** A stretch of time that a lot stands out. */
export type Span = Perishable['spans'][number];

/** A stretch in words: `'from the start of Mix to the end of Chill the loaf'`. */
export function spanWords(span: Span, titleOf: (stepId: string) => string): string {
  const at = (anchor: Span['fromAnchor'], stepId: string) => `the ${anchor} of ${titleOf(stepId)}`;
  return `from ${at(span.fromAnchor, span.fromStepId)} to ${at(span.toAnchor, span.toStepId)}`;
}

/** How long food may stand out in usual air, in seconds (USDA FSIS): what a new lot begins with. */
export const USUAL_LIMIT_S = timeOutLimitS(HOT_AIR_MILLI_C);

/** Said beside the limit of a lot: the hour for hot air (USDA FSIS). */
export const LIMIT_HINT = `Usually ${minutesSaid(USUAL_LIMIT_S)}, above 32 °C (90 °F) ${minutesSaid(timeOutLimitS(HOT_AIR_MILLI_C + 1))} (USDA FSIS).`;

/** A lot's limit in words: `'at most 120 min out in all'`; what is thrown away has no clock. */
export function limitWords(lot: Pick<Perishable, 'limitS' | 'thrownAway'>): string {
  if (lot.thrownAway) return 'for the picture only, thrown away: it has no clock';
  return `at most ${minutesSaid(lot.limitS)} out in all`;
}

/** An appointment in words: `'11:00–11:05, takes the hands'`. */
export function appointmentWords(
  appointment: Pick<FilmingDay['appointments'][number], 'startMin' | 'endMin' | 'hands'>,
): string {
  const { startMin, endMin, hands } = appointment;
  const times = `${clockText(startMin)}–${clockText(endMin)}`;
  return `${times}, ${hands ? 'takes the hands' : 'leaves the hands free'}`;
}

/** A pin in words: `'Say hello not before 09:20'`. */
export function pinWords(
  pin: FilmingDay['pins'][number],
  titleOf: (stepId: string) => string,
): string {
  return `${titleOf(pin.stepId)} ${pinTimeWords(pin)}`;
}

/** Whether a lot stands out longer than it may. */
export function isTooLong(lot: LotClock): boolean {
  return lot.minutes > lot.limitMin;
}
