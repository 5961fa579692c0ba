'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { MethodField, SureTick } from '../../../pantry/_components/yield-fields';
import { keepYield } from '../yield-actions';

interface Props {
  readonly ids: { readonly episodeId: string; readonly lineId: string };
  readonly foodName: string;
  readonly methods: readonly string[];
  readonly method: string;
}

/** Keeps the two weights just read as what this food weighs cooked. */
export function KeepYieldForm({ ids, foodName, methods, method }: Props) {
  const form = `keep-${ids.lineId}`;
  return (
    <FormFrame id={form} action={keepYield} fields={['method', 'sure']} hidden={ids}>
      {(state, pending) => (
        <div className="grid max-w-xl gap-3 border-b border-line pb-4">
          <MethodField form={form} state={state} methods={methods} initial={method} />
          <SureTick form={form} state={state} />
          <Button size="day" aria-disabled={pending || undefined}>
            {`Keep it for ${foodName}, for next time`}
          </Button>
        </div>
      )}
    </FormFrame>
  );
}
