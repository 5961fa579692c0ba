import { z } from 'zod';

const line = z.object({
  from: z.string(),
  said: z.string(),
});
const tick = line.extend({
  key: z.string(),
  /** What it is: "Ingredient", "Method". */
  kind: z.string(),
  words: z.string(),
  /** The same food in the dish already: then it is not ticked at first. */
  has: z.string().nullable(),
});

/** What a recipe as data offers, as it is drawn. */
export const recipeOffer = z.object({
  /** Another one where what was pasted, or what the episode lacks, is another. */
  version: z.string(),
  dishes: z.array(z.object({ title: z.string(), isNew: z.boolean(), ticks: z.array(tick) })),
  left: z.array(line.extend({ message: z.string() })),
  /** How many lines more were left out than are told. */
  more: z.number(),
});
export type RecipeOffer = z.output<typeof recipeOffer>;
export type RecipeTick = z.output<typeof tick>;
