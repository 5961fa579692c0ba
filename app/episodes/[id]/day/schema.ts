import { z } from 'zod';
import {
  optionalId,
  optionalText,
  requiredText,
  revision,
  rowId,
  runtime,
} from '../../../_forms/fields';
import { clock, optionalClock, optionalMinutes, whole } from '../../../_forms/number-fields';
import { FILM } from './field-names';

const episodeId = rowId;

export const makeDayForm = z.object({ episodeId });

export const keepOrderForm = z.object({ episodeId, dayId: rowId });

export const switchKindForm = z.object({
  episodeId,
  dayId: rowId,
  rev: revision,
  kind: z.enum(['asLived', 'packed'], { error: 'Choose as lived or packed.' }),
});

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
    lightMargin: whole('how many minutes are kept from sunrise and sunset', 0, 360),
    outfit: optionalText(200),
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

export type DayTexts = z.output<typeof dayForm>;

export const anchor = z.enum(['start', 'end'], { error: 'Choose start or end.' });
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
