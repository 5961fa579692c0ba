'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { TextField } from '../../../_ui/form/field';
import { saveCooking } from '../cooking-actions';

/** A change of weight as its form shows it: all as text. */
export interface CookingTexts {
  readonly moisture: string;
  readonly fat: string;
  readonly spread: string;
  readonly source: string;
}

interface Props {
  readonly episodeId: string;
  readonly recipeId: string;
  readonly rev: number;
  readonly texts: CookingTexts;
}

const NUMBER = { autoComplete: 'off' } as const;

/** What cooking does to the weight of a whole dish, in percent of its raw weight, and who says so. */
export function CookingForm({ episodeId, recipeId, rev, texts }: Props) {
  const form = `cooking-${recipeId}`;
  return (
    <FormFrame
      id={form}
      action={saveCooking}
      hidden={{ episodeId, recipeId, rev }}
      fields={['moisture', 'fat', 'spread', 'source']}
    >
      {(state) => (
        <div className="grid max-w-xl gap-4">
          <div className="grid grid-cols-2 items-end gap-4">
            <TextField
              form={form}
              name="moisture"
              label="Water, %"
              hint="Of the raw weight: −12 lost, 40 taken up."
              initial={texts.moisture}
              state={state}
              control={NUMBER}
            />
            <TextField
              form={form}
              name="fat"
              label="Fat, %"
              hint="−3 run out, 8 taken up; empty for none."
              initial={texts.fat}
              state={state}
              control={NUMBER}
            />
          </div>
          <TextField
            form={form}
            name="source"
            label="Who says so"
            hint="As “USDA Table of Cooking Yields, meat loaf” or “my own three trays”."
            initial={texts.source}
            state={state}
          />
          <TextField
            form={form}
            name="spread"
            label="May miss by, ± points"
            hint="5 is common practice, no source."
            initial={texts.spread}
            state={state}
            control={{ ...NUMBER, inputMode: 'decimal' }}
          />
          <div>
            <Button>Save the change of weight</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
