'use server';

import type { RecipeLine } from '#lib/episode/recipe-schema';
import { boundOffers } from '#lib/figures/bound-offer';
import { episodeFigures } from '#lib/figures/episode-figures';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { Edit } from '#lib/store/command';
import { readRevisedEpisode } from '#lib/store/read-revised-episode';
import { parseThenAct } from '../../_forms/parse-then-act';
import type { FormState } from '../../_ui/form/form-state';
import { boundAllForm, boundForm, giveBackForm } from './bound-schema';
import { change } from './change';
import { LINE_GONE, readLine } from './read-lines';

/** Counts a value that an ingredient's source does not state as a range: from 0 to so much in 100 g. */
export async function countAsRange(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(boundForm, state, form, async (sent) => {
    const { episodeId, lineId, rev, nutrient, maxPer100 } = sent;
    const line = await readLine(episodeId, lineId);
    if (!line) return LINE_GONE;
    const label = `Count ${NUTRIENTS[nutrient].label} of ${line.text} as a range`;
    return change(episodeId, label, [boundEdit(line, rev, [{ nutrient, maxPer100 }], [nutrient])]);
  });
}

/** The same for all values of a dish that are negligible. */
export async function countAllAsRanges(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(boundAllForm, state, form, async ({ episodeId, recipeId }) => {
    const read = await readRevisedEpisode(episodeId, new Date().toISOString());
    const segment = read?.file.episode.segments.find(({ recipe }) => recipe?.id === recipeId);
    if (!read || !segment?.recipe) return LINE_GONE;
    const { file, revs } = read;
    const offers = boundOffers(file, episodeFigures(file), segment.id).filter(
      ({ negligible }) => negligible,
    );
    const edits = segment.recipe.lines.flatMap((line) => {
      const own = offers.filter(({ lineId }) => lineId === line.id);
      const bounds = own.map(({ nutrient, maxPer100 }) => ({ nutrient, maxPer100 }));
      return own.length === 0 ? [] : [boundEdit(line, revs[line.id] ?? 0, bounds, [])];
    });
    if (edits.length === 0) return LINE_GONE;
    return change(episodeId, `Count what is negligible in ${segment.title} as ranges`, edits);
  });
}

/** Takes a range back: the value is missing again. */
export async function giveBackRange(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(giveBackForm, state, form, async ({ episodeId, lineId, rev, nutrient }) => {
    const line = await readLine(episodeId, lineId);
    if (!line) return LINE_GONE;
    const label = `Leave ${NUTRIENTS[nutrient].label} of ${line.text} missing`;
    return change(episodeId, label, [boundEdit(line, rev, [], [nutrient])]);
  });
}

function boundEdit(
  line: RecipeLine,
  rev: number,
  added: RecipeLine['bounded'],
  taken: readonly Nutrient[],
): Edit {
  const kept = line.bounded.filter(({ nutrient }) => !taken.includes(nutrient));
  const bounded = [...kept, ...added];
  const patch = { bounded: bounded.length > 0 ? bounded : null };
  return { op: 'update', entity: 'RecipeLine', id: line.id, rev, patch };
}
