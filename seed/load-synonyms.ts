import { searchSynonymsSchema, type SearchSynonym } from '#lib/foods/search-synonyms';
import { readSeedJson } from '#seed/load-sr28';

/** The other names of foods that the search knows, from `synonyms.json`. */
export function loadSynonyms(): readonly SearchSynonym[] {
  return searchSynonymsSchema.parse(readSeedJson('synonyms.json')).synonyms;
}
