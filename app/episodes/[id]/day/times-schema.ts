import { z } from 'zod';
import { requiredText, revision, rowId, ticked } from '../../../_forms/fields';
import { clock } from '../../../_forms/number-fields';

const ofDay = { episodeId: rowId, dayId: rowId };

const appointmentTexts = {
  title: requiredText('what it is', 120),
  start: clock('when it begins'),
  end: clock('when it is over'),
  hands: ticked,
};

function inOrder(
  { start, end }: { readonly start: number; readonly end: number },
  context: z.RefinementCtx,
): void {
  if (end > start) return;
  const message = 'The end must come after the start; after midnight write 24:30.';
  context.addIssue({ code: 'custom', path: ['end'], message });
}

export const newAppointmentForm = z.object({ ...ofDay, ...appointmentTexts }).superRefine(inOrder);
export const appointmentForm = z
  .object({ ...ofDay, appointmentId: rowId, rev: revision, ...appointmentTexts })
  .superRefine(inOrder);
export const removeAppointmentForm = z.object({ ...ofDay, appointmentId: rowId, rev: revision });

/** How a step is tied to a clock time. */
const PIN_WHENS = ['notBefore', 'at', 'notAfter'] as const;

const pinTexts = {
  stepId: requiredText('which step it is', 64),
  when: z.enum(PIN_WHENS),
  at: clock('the clock time'),
};

const ofSegment = { episodeId: rowId, segmentId: rowId };
export const newPinForm = z.object({ ...ofDay, ...pinTexts });
export const pinForm = z.object({ episodeId: rowId, pinId: rowId, rev: revision, ...pinTexts });
export const removePinForm = z.object({ ...ofSegment, pinId: rowId, rev: revision });
