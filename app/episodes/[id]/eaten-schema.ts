import { z } from 'zod';
import type { MassRange, Ratio } from '#lib/episode/fields';
import { readGrams } from '#lib/units/read-quantity';
import { unclearNumber } from '#lib/units/printed';
import { grams, optionalId, optionalText, revision, rowId } from '../../_forms/fields';
import { optionalPercent } from '../../_forms/number-fields';
import { readShare } from './share-field';

/** How much of a dish was eaten, as it was typed; `permille` is null for the kitchen's own spread. */
export type TypedEaten =
  | { readonly kind: 'share'; readonly share: Ratio }
  | { readonly kind: 'byEye'; readonly share: Ratio; readonly permille: number | null }
  | { readonly kind: 'mass'; readonly mass: MassRange }
  | {
      readonly kind: 'plate';
      readonly beforeMg: number;
      readonly afterMg: number;
      readonly scaleId: string | null;
    };

export const EATEN_WAYS = ['all', 'share', 'byEye', 'mass', 'plate', 'none'] as const;
export type EatenWay = (typeof EATEN_WAYS)[number];

/** One number of grams off a scale; null where the field was left empty. */
const reading = z
  .string()
  .trim()
  .max(40, 'This is too long for a number.')
  .default('')
  .transform((text, context): number | null => {
    if (text === '') return null;
    const read = readGrams(text);
    if (read && read.lowMg === read.highMg) return read.valueMg;
    const message = unclearNumber(text) ?? 'Write the grams that the scale shows: 812 or 812.5.';
    context.addIssue({ code: 'custom', message });
    return z.NEVER;
  });

export const eatenForm = z
  .object({
    episodeId: rowId,
    segmentId: rowId,
    rev: revision,
    way: z.enum(EATEN_WAYS, { error: 'Choose how much of it you ate.' }),
    share: optionalText(80),
    spread: optionalPercent(),
    grams,
    before: reading,
    after: reading,
    scaleId: optionalId,
  })
  .transform(({ episodeId, segmentId, rev, way, ...texts }, context) => {
    const say = (path: string, message: string) => {
      context.addIssue({ code: 'custom', path: [path], message });
      return z.NEVER;
    };
    const to = (eaten: TypedEaten) => ({ episodeId, segmentId, rev, eaten });
    const { grams: mass, before, after, scaleId, spread } = texts;
    switch (way) {
      case 'all':
        return to({ kind: 'share', share: { num: 1, den: 1 } });
      case 'none':
        return to({ kind: 'share', share: { num: 0, den: 1 } });
      case 'share':
      case 'byEye': {
        const share = readShare(texts.share);
        if (!share || share.num === 0) return say('share', 'Write the part as 1/2, 0.5 or 1/3.');
        return to(way === 'share' ? { kind: way, share } : { kind: way, share, permille: spread });
      }
      case 'mass':
        if (!mass || mass.valueMg === 0) return say('grams', 'Write the grams you ate: 350.');
        return to({ kind: 'mass', mass });
      case 'plate':
        if (before === null) return say('before', 'Write what the full plate weighs: 812.');
        if (after === null) return say('after', 'Write what the plate weighs after: 460.');
        if (after >= before) {
          return say('after', 'The plate must weigh less after than before: look at both again.');
        }
        return to({ kind: 'plate', beforeMg: before, afterMg: after, scaleId });
    }
  });
