import { z } from 'zod';
import { STEP_ROLES } from '#lib/episode/schema';
import { CORE_MILLI_C, OVEN_MILLI_C } from '#lib/episode/step-limits';
import { checkDegrees } from '../../../_forms/degrees';
import {
  optionalId,
  optionalText,
  requiredText,
  revision,
  rowId,
  runtime,
  ticked,
} from '../../../_forms/fields';
import {
  clock,
  minutes,
  optionalClock,
  optionalMinutes,
  whole,
} from '../../../_forms/number-fields';
import { checkTimes } from './step-times';

const episodeId = rowId;

export const makeDayForm = z.object({ episodeId });

export const keepOrderForm = z.object({ episodeId });

export const switchKindForm = z.object({
  episodeId,
  dayId: rowId,
  rev: revision,
  kind: z.enum(['asLived', 'packed'], { error: 'Choose as lived or packed.' }),
});

/** A box per segment is named by its id, since which segments there are differs. */
export const FILM = 'film-';

export const dayForm = z
  .looseObject({
    episodeId,
    dayId: rowId,
    rev: revision,
    date: z.iso.date({ error: 'Write a date as 2026-12-12.' }),
    kind: z.enum(['asLived', 'packed'], { error: 'Choose as lived or packed.' }),
    start: clock('when the day starts', 1439),
    wrapBy: optionalClock(),
    mealGap: whole('how far meals are apart', 0, 720),
  })
  .superRefine(({ start, wrapBy }, context) => {
    if (wrapBy === null || wrapBy > start) return;
    const message = 'The wrap must come after the start; after midnight write 24:30.';
    context.addIssue({ code: 'custom', path: ['wrapBy'], message });
  })
  .transform((sent) => ({
    ...sent,
    segmentIds: Object.keys(sent)
      .filter((name) => name.startsWith(FILM) && sent[name] === 'on')
      .map((name) => name.slice(FILM.length)),
  }));

export const anchor = z.enum(['start', 'end'], { error: 'Choose start or end.' });
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

export const newStepForm = z.intersection(z.object({ episodeId, segmentId: rowId }), stepTexts);
export const stepForm = z.intersection(
  z.object({ episodeId, stepId: rowId, rev: revision }),
  stepTexts,
);

export const removeStepForm = z.object({
  episodeId,
  segmentId: rowId,
  stepId: rowId,
  rev: revision,
});

const linkTexts = {
  fromStepId: requiredText('which step comes first', 64),
  fromAnchor: anchor,
  toStepId: requiredText('which step comes after', 64),
  toAnchor: anchor,
  minLag: optionalMinutes(),
  maxLag: optionalMinutes(),
  reason: optionalText(200),
};

function linkOrder(
  link: {
    readonly fromStepId: string;
    readonly toStepId: string;
    readonly minLag: number | null;
    readonly maxLag: number | null;
  },
  context: z.RefinementCtx,
): void {
  if (link.fromStepId === link.toStepId) {
    const message = 'A step cannot wait for itself: choose another.';
    context.addIssue({ code: 'custom', path: ['toStepId'], message });
  }
  if (link.minLag !== null && link.maxLag !== null && link.minLag > link.maxLag) {
    const message = 'At most is less than at least: no time keeps both.';
    context.addIssue({ code: 'custom', path: ['maxLag'], message });
  }
}

export const newLinkForm = z.object({ episodeId, ...linkTexts }).superRefine(linkOrder);
export const linkForm = z
  .object({ episodeId, linkId: rowId, rev: revision, ...linkTexts })
  .superRefine(linkOrder);
export const removeLinkForm = z.object({
  episodeId,
  segmentId: rowId,
  linkId: rowId,
  rev: revision,
});

const shotTexts = {
  title: requiredText('what is to be seen', 200),
  stepId: optionalId,
  framing: optionalText(80),
  length: runtime.transform((seconds) => seconds ?? 0),
};

export const newShotForm = z.object({ episodeId, segmentId: rowId, ...shotTexts });
export const shotForm = z.object({ episodeId, shotId: rowId, rev: revision, ...shotTexts });
export const removeShotForm = z.object({
  episodeId,
  segmentId: rowId,
  shotId: rowId,
  rev: revision,
});
