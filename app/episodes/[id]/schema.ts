import { z } from 'zod';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { number, optionalWhole } from '../../_forms/number-fields';
import {
  optionalDate,
  optionalText,
  requiredText,
  revision,
  rowId,
  runtime,
} from '../../_forms/fields';
import { share } from './share-field';

const episodeId = rowId;

export const episodeForm = z.object({
  episodeId,
  rev: revision,
  title: requiredText('what the episode is called', 160),
  hook: optionalText(600),
  region: z.enum(['US', 'EU'], { error: 'Choose US or EU.' }),
  publishOn: optionalDate,
  disclosure: optionalText(400),
});

const segmentTexts = {
  title: requiredText('what it is called', 160),
  planned: runtime.transform((seconds) => seconds ?? 0),
  batches: share('how often it is made'),
  spareTakes: optionalWhole(0, 10).transform((takes) => takes ?? 0),
  spareScope: z
    .enum(['whole', 'spoiltLines'], { error: 'Choose what a spare take needs again.' })
    .default('spoiltLines'),
  pickupReserve: optionalWhole(0, 10).transform((pickups) => pickups ?? 0),
};

export const newSegmentForm = z.object({
  episodeId,
  kind: z.enum(['recipe', 'talk']),
  ...segmentTexts,
});

export const segmentForm = z.object({
  episodeId,
  segmentId: rowId,
  rev: revision,
  ...segmentTexts,
});

export const moveForm = z.object({ episodeId, segmentId: rowId, to: z.enum(['up', 'down']) });
export const moveLineForm = z.object({
  episodeId,
  recipeId: rowId,
  lineId: rowId,
  to: z.enum(['up', 'down']),
});

/** Ids one after the other, as a drop sends them. */
const order = z
  .string()
  .max(40_000)
  .transform((text) => text.split(' ').filter((id) => id !== ''));
export const orderSegmentsForm = z.object({ episodeId, order, moved: rowId });
export const orderLinesForm = z.object({ episodeId, recipeId: rowId, order, moved: rowId });
export const throwAwayForm = z.object({ episodeId, rowId });

/** A row to take out, as its button sends it. */
export const removeForm = (
  name: `${'segment' | 'line' | 'portion' | 'point' | 'weighing' | 'target'}Id`,
) =>
  z.object({ episodeId, [name]: rowId, rev: revision }).transform((sent) => ({
    episodeId: String(sent.episodeId),
    id: String(sent[name]),
    rev: Number(sent.rev),
  }));

export const takeBackForm = z.object({ episodeId, groupId: rowId });

const point = { text: requiredText('what is to be said', 600) };
export const newPointForm = z.object({ episodeId, segmentId: rowId, ...point });
export const pointForm = z.object({ episodeId, pointId: rowId, rev: revision, ...point });

export const dayAnswerForm = z
  .object({
    episodeId,
    rev: revision,
    kind: z.enum(['', 'nothing', 'notCounted']),
    what: optionalText(200),
  })
  .refine(({ kind, what }) => kind !== 'notCounted' || what !== '', {
    path: ['what'],
    message: 'Say what it was.',
  });

const target = {
  nutrient: z.enum(NUTRIENT_NAMES as unknown as [Nutrient, ...Nutrient[]], {
    error: 'Choose what is counted.',
  }),
  relation: z.enum(['atLeast', 'atMost', 'about'], {
    error: 'Choose at least, at most or about.',
  }),
  amount: number('how much', 0, 1_000_000),
  /** Empty for all dishes, a dish, or a dish and one of its portions. */
  segmentId: z
    .string()
    .trim()
    .max(130)
    .default('')
    .transform((text) => {
      const [segmentId = null, portionId = null] = text.split(' ').filter((id) => id !== '');
      return { segmentId, portionId };
    }),
};
interface Scoped {
  readonly segmentId: { readonly segmentId: string | null; readonly portionId: string | null };
}
function withScope<T extends Scoped>({ segmentId, ...rest }: T) {
  return { ...rest, ...segmentId };
}
export const newTargetForm = z.object({ episodeId, ...target }).transform(withScope);
export const targetForm = z
  .object({ episodeId, targetId: rowId, rev: revision, ...target })
  .transform(withScope);
