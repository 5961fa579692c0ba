'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { AreaField } from '../../../_ui/form/field';
import { pasteLines } from '../match-actions';
import { RecipeWay } from './recipe-way';

const EXAMPLE = '180 g egg whites\n2 tbsp olive oil\n1 1/2 cups shredded cheddar\nsalt to taste';

interface Props {
  readonly episodeId: string;
  readonly recipeId: string;
  /** What stands in it at first, as a food that was named and not counted. */
  readonly initial?: string | undefined;
}

/** A whole list of ingredients at once, as it stands on the note. */
export function PasteForm({ episodeId, recipeId, initial = '' }: Props) {
  const form = `paste-${recipeId}`;
  return (
    <FormFrame id={form} action={pasteLines} fields={['list']} hidden={{ episodeId, recipeId }}>
      {(state) => (
        <div className="grid max-w-3xl gap-4">
          <AreaField
            form={form}
            name="list"
            label="Ingredients"
            hint="As on your note or from a recipe: one on each line, with amounts. Nothing is counted for good before you say so."
            state={state}
            initial={initial}
            control={{ rows: 6, placeholder: EXAMPLE, spellCheck: false }}
          />
          <div className="flex flex-wrap items-center gap-x-5 gap-y-2">
            <Button tone="go">Add the ingredients</Button>
            <RecipeWay episodeId={episodeId} />
          </div>
        </div>
      )}
    </FormFrame>
  );
}
