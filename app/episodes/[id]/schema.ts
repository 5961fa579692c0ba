import { z } from 'zod';
import { LINE_UNITS, type Ratio } from '#lib/episode/schema';
import { STATES } from '#lib/foods/food';
import { readGrams, readQuantity } from '#lib/units/read-quantity';
import {
  amount,
  grams,
  optionalDate,
  optionalId,
  optionalText,
  requiredText,
  revision,
  rowId,
  runtime,
  ticked,
} from '../../_forms/fields';

const episodeId = rowId;

/** A single exact amount, as the share that is eaten; never a range. */
function share(what: string) {
  return z
    .string()
    .trim()
    .default('1')
    .transform((text, context): Ratio => {
      const read = readQuantity(text);
      const single = read && read.low.num === read.high.num && read.low.den === read.high.den;
      if (single) return read.low;
      context.addIssue({ code: 'custom', message: `Write ${what} as 1, 0.5 or 1/2.` });
      return z.NEVER;
    });
}

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
  eaten: share('the part that counts'),
  batches: share('how often it is made'),
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

const lineTexts = {
  text: requiredText('what the ingredient is', 400),
  foodId: optionalId,
  quantity: amount,
  unit: z.enum(LINE_UNITS, { error: 'Choose a unit.' }),
  state: z.enum(STATES, { error: 'Choose how it was weighed.' }),
  grams,
  leftBehind: grams,
  note: optionalText(200),
  asBought: ticked,
  spoiltByTake: ticked,
};

export const newLineForm = z.object({
  episodeId,
  recipeId: rowId,
  ...lineTexts,
  /** Null for the state in which its food is listed. */
  state: z
    .enum(['', ...STATES], { error: 'Choose how it was weighed.' })
    .default('')
    .transform((state) => state || null),
});
export const lineForm = z.object({ episodeId, lineId: rowId, rev: revision, ...lineTexts });

/** A row to take out, as its button sends it. */
export const removeForm = (name: 'segmentId' | 'lineId' | 'portionId' | 'pointId') =>
  z.object({ episodeId, [name]: rowId, rev: revision }).transform((sent) => ({
    episodeId: String(sent.episodeId),
    id: String(sent[name]),
    rev: Number(sent.rev),
  }));

export const takeBackForm = z.object({ episodeId, groupId: rowId });

export const portionForm = z
  .object({
    episodeId,
    recipeId: rowId,
    size: z.string().trim().default(''),
    kind: z.enum(['count', 'mass'], { error: 'Choose equal portions or grams.' }),
    name: optionalText(80),
  })
  .transform(({ size, ...rest }, context) => {
    const count = /^\d{1,4}$/.test(size) ? Number(size) : null;
    const mass = readGrams(size);
    if (rest.kind === 'count' && count !== null && count >= 1 && count <= 1000) {
      return { ...rest, ofCount: count, massMg: null };
    }
    if (rest.kind === 'mass' && mass && mass.lowMg === mass.highMg && mass.valueMg > 0) {
      return { ...rest, ofCount: null, massMg: mass.valueMg };
    }
    const message =
      rest.kind === 'count'
        ? 'Write into how many equal portions it goes: 2.'
        : 'Write the grams of one portion: 180.';
    context.addIssue({ code: 'custom', path: ['size'], message });
    return z.NEVER;
  });

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
