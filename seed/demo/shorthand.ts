import { UNSAID_LINE } from '#lib/episode/unsaid';
import type { MassRange, Ratio } from '#lib/episode/fields';
import type { RecipeLine, Weighing } from '#lib/episode/recipe-schema';
import type { TalkingPoint } from '#lib/episode/schema';
import type { Perishable, Shot, Step, StepLink } from '#lib/episode/step-schema';
import { UNSAID_STEP } from '#lib/episode/unsaid';

/**
 * Short ways to write the demo down, so that its files read like notes on a kitchen wall: grams, minutes and
 * degrees as a person says them, turned here into the file's milligrams, seconds and thousandths of a degree.
 */

/** Milligrams of grams with at most three decimals. `grams(0.6)` → `600`. */
export const grams = (g: number): number => Math.round(g * 1000);

/** Seconds of minutes. */
export const minutes = (m: number): number => Math.round(m * 60);

/** Thousandths of a degree Celsius. */
export const celsius = (degrees: number): number => degrees * 1000;

/** A whole number or a fraction. `part(1, 2)` is a half. */
export const part = (num: number, den = 1): Ratio => ({ num, den });

/** An amount that is one number. */
export const amount = (num: number, den = 1): NonNullable<RecipeLine['quantity']> => ({
  low: part(num, den),
  high: part(num, den),
});

/** Grams typed by the person, without a range. */
export const typed = (g: number): MassRange => ({
  lowMg: grams(g),
  valueMg: grams(g),
  highMg: grams(g),
});

/** An ingredient that differs from the usual only where it says so. */
export function line(
  id: string,
  text: string,
  foodId: string | null,
  rest: Partial<Omit<RecipeLine, 'id' | 'text' | 'foodId'>> = {},
): RecipeLine {
  return {
    ...UNSAID_LINE,
    id,
    text,
    quantity: null,
    unit: null,
    measureName: null,
    foodId,
    match: 'confirmed',
    orFoodId: null,
    madeFrom: null,
    cookMethod: null,
    retention: null,
    bounded: [],
    state: 'asIs',
    asBought: false,
    planned: null,
    leftBehind: { kind: 'none' },
    spoiltByTake: false,
    note: '',
    ...rest,
  };
}

/**
 * So many grams read off a scale, a bowl's weight taken off: of one ingredient, or (null) of whatever the
 * rest says it is shared by.
 */
export function reading(
  id: string,
  lineId: string | null,
  g: { readonly gross: number; readonly tare?: number },
  rest: Partial<Omit<Weighing, 'id'>> & Pick<Weighing, 'at' | 'scaleId'>,
): Weighing {
  return {
    id,
    kind: 'raw',
    grossMg: grams(g.gross),
    tareMg: grams(g.tare ?? 0),
    afterId: null,
    method: 'direct',
    shares: lineId === null ? [] : [{ lineId, share: part(1) }],
    ...rest,
  };
}

/** A step that takes the hands for about so many minutes, off camera, unless it says otherwise. */
export function step(
  id: string,
  title: string,
  role: Step['role'],
  [low, usual, high]: readonly [number, number, number],
  rest: Partial<Omit<Step, 'id' | 'title' | 'role' | 'lowS' | 'usualS' | 'highS'>> = {},
): Step {
  return {
    id,
    title,
    role,
    lowS: minutes(low),
    usualS: minutes(usual),
    highS: minutes(high),
    choose: null,
    hands: true,
    burners: 0,
    racks: 0,
    oven: null,
    coreMilliC: null,
    restS: 0,
    ...UNSAID_STEP,
    onCamera: false,
    daylight: false,
    note: '',
    ...rest,
  };
}

/** Minutes between the end of one step and the start of another. */
export function link(
  id: string,
  fromStepId: string,
  toStepId: string,
  wait: { readonly atLeast?: number; readonly atMost?: number },
  reason: string,
): StepLink {
  return {
    id,
    fromStepId,
    toStepId,
    fromAnchor: 'end',
    toAnchor: 'start',
    minLagS: minutes(wait.atLeast ?? 0),
    maxLagS: wait.atMost === undefined ? null : minutes(wait.atMost),
    reason,
  };
}

/** When a perishable stands out of the fridge: from the start or end of one step to that of another. */
export function span(
  [fromStepId, fromAnchor]: readonly [string, 'start' | 'end'],
  [toStepId, toAnchor]: readonly [string, 'start' | 'end'],
): Perishable['spans'][number] {
  return { fromStepId, fromAnchor, toStepId, toAnchor };
}

/** A shot of so many seconds in the edit. */
export function shot(
  id: string,
  title: string,
  stepId: string | null,
  framing: string,
  lengthS: number,
): Shot {
  return { id, title, stepId, framing, lengthS };
}

/** A sentence to say. */
export const say = (id: string, text: string): TalkingPoint => ({ id, text });
