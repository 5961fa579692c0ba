'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { SureTick, WEIGHT_FIELDS, WeightFields } from '../../../pantry/_components/yield-fields';
import { sayYield } from '../yield-actions';

interface Props {
  readonly ids: { readonly episodeId: string; readonly lineId: string };
  readonly methods: readonly string[];
}

/** A raw and a cooked weight of an ingredient, typed: its food keeps them for next time too. */
export function OwnWeightsForm({ ids, methods }: Props) {
  const form = `own-${ids.lineId}`;
  return (
    <FormFrame id={form} action={sayYield} fields={WEIGHT_FIELDS} hidden={ids}>
      {(state) => (
        <div className="grid max-w-xl gap-3">
          <WeightFields form={form} state={state} methods={methods} />
          <SureTick form={form} state={state} />
          <div>
            <Button size="small">Keep the two weights</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
