import { z } from 'zod';
import { LINE_UNITS, type Ratio } from '#lib/episode/schema';
import { STATES } from '#lib/foods/food';
import { NUTRIENT_NAMES, type Nutrient } from '#lib/foods/nutrients';
import { gramsText, readGrams, readQuantity } from '#lib/units/read-quantity';
import { number, optionalWhole } from '../../_forms/number-fields';
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
  spareTakes: optionalWhole(0, 10).transform((takes) => takes ?? 0),
  spareScope: z
    .enum(['whole', 'spoiltLines'], { error: 'Choose what a spare take needs again.' })
    .default('spoiltLines'),
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
export const lineForm = z.object({
  episodeId,
  lineId: rowId,
  rev: revision,
  ...lineTexts,
  /** Which of the food's measures is meant; null for the first that fits. */
  measureName: optionalText(120).transform((name) => name || null),
  /** The food whose measures the form listed. */
  measuresOf: optionalId,
});

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

/** Milligrams as a scale shows them: one number. Empty is 0 where `empty` allows it. */
function scaleGrams(empty: 'is none' | 'is missing') {
  return z
    .string()
    .trim()
    .max(40, 'This is too long for a number.')
    .default('')
    .transform((text, context): number => {
      if (text === '' && empty === 'is none') return 0;
      const read = readGrams(text);
      if (read && read.lowMg === read.highMg) return read.valueMg;
      const message = 'Write the grams that the scale shows: 252, 252.5 or 1252.';
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}

const reading = {
  gross: scaleGrams('is missing'),
  tare: scaleGrams('is none'),
  scaleId: rowId,
  method: z.enum(['direct', 'difference'], { error: 'Choose how it was weighed.' }),
};

/** Something must have been weighed: the container alone is no reading, and less than it a mistake. */
function moreThanContainer(
  { gross, tare }: { readonly gross: number; readonly tare: number },
  context: z.RefinementCtx,
) {
  if (gross > tare) return;
  const text = (mg: number) => `${gramsText({ lowMg: mg, valueMg: mg, highMg: mg })} g`;
  const message =
    gross === 0
      ? 'The scale shows more than 0 g where something stands on it.'
      : `${text(tare)} to take off leaves nothing: the scale showed ${text(gross)}.`;
  context.addIssue({ code: 'custom', path: [gross === 0 ? 'gross' : 'tare'], message });
}

export const weighLineForm = z
  .object({ episodeId, lineId: rowId, ...reading })
  .superRefine(moreThanContainer);
export const weighDishForm = z
  .object({ episodeId, recipeId: rowId, ...reading })
  .superRefine(moreThanContainer);

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
