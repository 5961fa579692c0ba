import { z } from 'zod';
import { requiredText, revision, rowId, ticked } from '../../../_forms/fields';
import { clock } from '../../../_forms/number-fields';
import type { PinTry } from '#lib/shoot/pin-cost';
import { PIN_WHENS } from '#lib/shoot/pins';
import type { ShootPlan } from '#lib/shoot/plan';

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

const pinTexts = {
  stepId: requiredText('which step it is', 64),
  when: z.enum(PIN_WHENS),
  at: clock('the clock time'),
};

const minuteOfDay = z.coerce.number().int().min(0).max(2880);
/** A step and a minute of the day, as the picture of the day sends them. */
const triedPin = z.object({ pin: rowId, when: z.enum(PIN_WHENS), to: minuteOfDay });
export const pinStepForm = z.object({
  ...ofDay,
  stepId: rowId,
  when: z.enum(PIN_WHENS),
  min: minuteOfDay,
});

/** The pin that an address asks about; null where it asks about none, or about what the day does not have. */
export function askedPin(asked: unknown, plan: Pick<ShootPlan, 'entries'>): PinTry | null {
  const read = triedPin.safeParse(asked);
  if (!read.success || !plan.entries.some(({ stepId }) => stepId === read.data.pin)) return null;
  return { stepId: read.data.pin, when: read.data.when, min: read.data.to };
}

const ofSegment = { episodeId: rowId, segmentId: rowId };
export const newPinForm = z.object({ ...ofDay, ...pinTexts });
export const pinForm = z.object({ episodeId: rowId, pinId: rowId, rev: revision, ...pinTexts });
export const removePinForm = z.object({ ...ofSegment, pinId: rowId, rev: revision });
