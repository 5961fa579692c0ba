import { z } from 'zod';
import { STEP_ROLES } from '#lib/episode/step-schema';
import { CORE_MILLI_C, OVEN_MILLI_C } from '#lib/episode/step-limits';
import { checkDegrees } from '../../../_forms/degrees';
import {
  optionalId,
  optionalText,
  requiredText,
  revision,
  rowId,
  ticked,
} from '../../../_forms/fields';
import { minutes, optionalMinutes, optionalWhole, whole } from '../../../_forms/number-fields';
import { checkTimes } from './step-times';

const degreeUnit = z.enum(['C', 'F'], { error: 'Choose °C or °F.' });

/** Degrees with their unit beside them, in thousandths of a degree Celsius; null where none were typed. */
function degrees(
  sent: { readonly text: string; readonly unit: 'C' | 'F'; readonly path: string },
  limits: { readonly min: number; readonly max: number },
  context: z.RefinementCtx,
): number | null {
  if (sent.text === '') return null;
  const { milliC, wrong } = checkDegrees(sent.text, sent.unit, limits);
  if (wrong !== null) context.addIssue({ code: 'custom', path: [sent.path], message: wrong });
  return milliC;
}

const stepTexts = z
  .object({
    title: requiredText('what is to be done', 200),
    role: z.enum(STEP_ROLES, { error: 'Choose what kind of step it is.' }),
    low: optionalMinutes(),
    usual: minutes('how long it usually takes'),
    high: optionalMinutes(),
    hands: z.enum(['hands', 'alone'], { error: 'Choose hands or by itself.' }),
    burners: whole('how many burners, or 0', 0, 12),
    racks: whole('how many racks, or 0', 0, 12),
    ovenId: optionalId,
    oven: z.string().trim().max(20).default(''),
    ovenUnit: degreeUnit,
    core: z.string().trim().max(20).default(''),
    coreUnit: degreeUnit,
    rest: optionalMinutes(),
    chooseMin: optionalMinutes(),
    chooseMax: optionalMinutes(),
    onCamera: ticked,
    daylight: ticked,
    note: optionalText(400),
    contact: z
      .enum(['', 'rawAnimal', 'readyToEat'], { error: 'Choose what the hands touch.' })
      .default('')
      .transform((touched) => touched || null),
    applianceId: optionalId,
    counter: optionalWhole(0, 12).transform((places) => places ?? 0),
    cameraSetUp: optionalText(80),
    evening: ticked,
  })
  .transform((sent, context) => {
    const { low, usual, high, oven, ovenUnit, core, coreUnit, hands, ...rest } = sent;
    const ovenMilliC = degrees({ text: oven, unit: ovenUnit, path: 'oven' }, OVEN_MILLI_C, context);
    const coreMilliC = degrees({ text: core, unit: coreUnit, path: 'core' }, CORE_MILLI_C, context);
    const fault = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    const lowS = low ?? usual;
    const highS = high ?? usual;
    const times = checkTimes(lowS, usual, highS);
    if (times.low !== null) fault('low', times.low);
    if (times.high !== null) fault('high', times.high);
    if (ovenMilliC === null && rest.ovenId !== null) {
      fault('oven', 'A step in the oven needs its temperature.');
    }
    if (ovenMilliC === null && rest.racks > 0) {
      fault('racks', 'Racks are in the oven: say its temperature too, or 0 racks.');
    }
    const { chooseMin, chooseMax } = rest;
    if ((chooseMin === null) !== (chooseMax === null)) {
      fault('chooseMax', 'A length that may be chosen has both its ends, or none.');
    } else if (chooseMin !== null && chooseMax !== null && chooseMin > chooseMax) {
      fault('chooseMax', 'The longest choice is shorter than the shortest one.');
    }
    return {
      ...rest,
      lowS,
      usualS: usual,
      highS,
      ovenMilliC,
      coreMilliC,
      hands: hands === 'hands',
    };
  });

export type StepTexts = z.output<typeof stepTexts>;

export const newStepForm = z.intersection(
  z.object({ episodeId: rowId, segmentId: rowId }),
  stepTexts,
);
export const stepForm = z.intersection(
  z.object({ episodeId: rowId, stepId: rowId, rev: revision }),
  stepTexts,
);

export const removeStepForm = z.object({
  episodeId: rowId,
  segmentId: rowId,
  stepId: rowId,
  rev: revision,
});
