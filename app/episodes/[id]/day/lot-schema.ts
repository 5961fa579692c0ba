import { z } from 'zod';
import { requiredText, revision, rowId, ticked } from '../../../_forms/fields';
import { minutes } from '../../../_forms/number-fields';
import { anchor } from './schema';

const of = { episodeId: rowId, segmentId: rowId };

const lotTexts = {
  name: requiredText('what stands out of the cold', 120),
  limit: minutes('how long it may stand out in all'),
  thrownAway: ticked,
};

export const newLotForm = z.object({ ...of, ...lotTexts });
export const lotForm = z.object({ ...of, lotId: rowId, rev: revision, ...lotTexts });
export const removeLotForm = z.object({ ...of, lotId: rowId, rev: revision });

const spanTexts = {
  fromStepId: requiredText('with which step it comes out', 64),
  fromAnchor: anchor,
  toStepId: requiredText('with which step it is cold or eaten again', 64),
  toAnchor: anchor,
};

function someTime(
  span: {
    readonly fromStepId: string;
    readonly fromAnchor: 'start' | 'end';
    readonly toStepId: string;
    readonly toAnchor: 'start' | 'end';
  },
  context: z.RefinementCtx,
): void {
  if (span.fromStepId !== span.toStepId) return;
  if (span.fromAnchor === 'start' && span.toAnchor === 'end') return;
  const message = 'Within one step it stands out from its start to its end: choose these.';
  context.addIssue({ code: 'custom', path: ['toAnchor'], message });
}

export const newSpanForm = z
  .object({ episodeId: rowId, lotId: rowId, ...spanTexts })
  .superRefine(someTime);
export const spanForm = z
  .object({ episodeId: rowId, spanId: rowId, rev: revision, ...spanTexts })
  .superRefine(someTime);
export const removeSpanForm = z.object({
  episodeId: rowId,
  lotId: rowId,
  spanId: rowId,
  rev: revision,
});
