import { z } from 'zod';
import { sectionSchema } from '#lib/foods/food';

/**
 * Another name by which cooks ask for a food. `words` are alternatives, each one name of one or more words.
 * It stands for every food whose own name has all words of `means` (in one of `sections`, if given), and for
 * the foods of the numbers in `foods`; a query that is exactly this name gives those numbers first.
 */
export const searchSynonymSchema = z.object({
  words: z.array(z.string().min(2).max(60)).min(1),
  means: z.string().min(2).max(60).optional(),
  sections: z.array(sectionSchema).optional(),
  foods: z.array(z.string().regex(/^\d{5}$/)).optional(),
});
export type SearchSynonym = Readonly<z.infer<typeof searchSynonymSchema>>;

export const searchSynonymsSchema = z.object({ synonyms: z.array(searchSynonymSchema) });
