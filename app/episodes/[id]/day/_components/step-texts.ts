import type { Choice } from '../../../../_ui/form/field';
import type { Kitchen, Oven } from '#lib/episode/kitchen-schema';
import type { Episode } from '#lib/episode/schema';
import { STEP_ROLES, type Step } from '#lib/episode/step-schema';
import { CONTACT_WORDS, ROLE_WORDS } from '#lib/shoot/step-words';
import { degreesTyped, minutesTyped } from '#lib/units/read-typed';

/** A step as its form shows it: every field as text that reads back the same. */
export interface StepText {
  readonly title: string;
  readonly role: string;
  readonly low: string;
  readonly usual: string;
  readonly high: string;
  readonly hands: 'hands' | 'alone';
  readonly burners: string;
  readonly racks: string;
  readonly ovenId: string;
  readonly oven: string;
  readonly core: string;
  readonly unit: 'C' | 'F';
  readonly rest: string;
  readonly chooseMin: string;
  readonly chooseMax: string;
  readonly onCamera: boolean;
  readonly daylight: boolean;
  readonly note: string;
  readonly contact: string;
  readonly applianceId: string;
  readonly counter: string;
  readonly cameraSetUp: string;
  readonly evening: boolean;
  /** Something of what is asked last was given, so that it stands open. */
  readonly more: boolean;
}

/** The form of a step that is not there yet. */
export function emptyStep(region: Episode['region']): StepText {
  return {
    title: '',
    role: 'prep',
    low: '',
    usual: '',
    high: '',
    hands: 'hands',
    burners: '0',
    racks: '0',
    ovenId: '',
    oven: '',
    core: '',
    unit: region === 'US' ? 'F' : 'C',
    rest: '',
    chooseMin: '',
    chooseMax: '',
    onCamera: false,
    daylight: false,
    note: '',
    contact: '',
    applianceId: '',
    counter: '0',
    cameraSetUp: '',
    evening: false,
    more: false,
  };
}

/** A step in the texts of its form. */
export function stepText(step: Step, region: Episode['region']): StepText {
  const { unit } = emptyStep(region);
  const optional = (milliC: number | null | undefined) =>
    milliC == null ? '' : degreesTyped(milliC, unit);
  return {
    title: step.title,
    role: step.role,
    low: minutesTyped(step.lowS),
    usual: minutesTyped(step.usualS),
    high: minutesTyped(step.highS),
    hands: step.hands ? 'hands' : 'alone',
    burners: String(step.burners),
    racks: String(step.racks),
    ovenId: step.oven?.ovenId ?? '',
    oven: optional(step.oven?.milliC),
    core: optional(step.coreMilliC),
    unit,
    rest: step.restS === 0 ? '' : minutesTyped(step.restS),
    chooseMin: step.choose ? minutesTyped(step.choose.minS) : '',
    chooseMax: step.choose ? minutesTyped(step.choose.maxS) : '',
    onCamera: step.onCamera,
    daylight: step.daylight,
    note: step.note,
    contact: step.contact ?? '',
    applianceId: step.applianceId ?? '',
    counter: String(step.counter),
    cameraSetUp: step.cameraSetUp,
    evening: step.evening,
    more: saysMore(step),
  };
}

function saysMore(step: Step): boolean {
  const { coreMilliC, choose, contact, applianceId } = step;
  return (
    [coreMilliC, choose, contact, applianceId].some((said) => said !== null) ||
    [step.note, step.cameraSetUp].some((text) => text !== '') ||
    step.counter > 0 ||
    step.onCamera ||
    step.evening
  );
}

/** What the hands may touch, to choose from. */
const CONTACT_CHOICES: readonly Choice[] = [
  { value: '', words: 'nothing special' },
  ...Object.entries(CONTACT_WORDS).map(([value, words]) => ({ value, words })),
];

/** What only some kitchens have a step asked: no choices, or false, where the form leaves it out. */
export interface StepAsks {
  readonly contacts: readonly Choice[];
  readonly appliances: readonly Choice[];
  readonly counter: boolean;
  readonly cameraSetUp: boolean;
}

/** A field stands where the kitchen counts it, and where the step has it already: so saving loses nothing. */
export function stepAsks(
  kitchen: Pick<Kitchen, 'appliances' | 'counterPlaces' | 'cameraChangeS'>,
  step?: Pick<Step, 'counter' | 'cameraSetUp'>,
): StepAsks {
  const { appliances, counterPlaces, cameraChangeS } = kitchen;
  const none = { value: '', words: 'none' };
  return {
    contacts: CONTACT_CHOICES,
    appliances:
      appliances.length === 0
        ? []
        : [none, ...appliances.map(({ id, name }) => ({ value: id, words: name }))],
    counter: counterPlaces !== null || (step?.counter ?? 0) > 0,
    cameraSetUp: cameraChangeS !== null || (step?.cameraSetUp ?? '') !== '',
  };
}

export const ROLE_CHOICES: readonly Choice[] = STEP_ROLES.map((value) => ({
  value,
  words: ROLE_WORDS[value],
}));

/** The ovens of a kitchen to choose from; the first choice leaves it to the plan, or means none. */
export function ovenChoices(ovens: readonly Pick<Oven, 'id' | 'name'>[]): readonly Choice[] {
  return [
    { value: '', words: 'any, or none' },
    ...ovens.map(({ id, name }) => ({ value: id, words: name })),
  ];
}
