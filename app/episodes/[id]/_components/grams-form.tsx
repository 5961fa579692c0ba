'use client';

import { FormFrame } from '../../../_forms/form-frame';
import { Button } from '../../../_ui/button';
import { CONTROL, Field } from '../../../_ui/form/field';
import { sayGrams } from '../match-actions';

interface Props {
  readonly episodeId: string;
  readonly lineId: string;
  readonly rev: number;
  /** The ingredient's words. */
  readonly what: string;
}

/** Grams, or a range, for an ingredient whose words say none. */
export function GramsForm({ episodeId, lineId, rev, what }: Props) {
  const form = `grams-${lineId}`;
  return (
    <FormFrame id={form} action={sayGrams} fields={['grams']} hidden={{ episodeId, lineId, rev }}>
      {(state) => (
        <div className="flex flex-wrap items-center gap-x-3 gap-y-1">
          <span aria-hidden="true" className="text-fine text-soft">
            Grams, or a range
          </span>
          <Field form={form} name="grams" label="Grams, or a range" state={state} quiet>
            {(wired) => (
              <input
                {...wired}
                className={`${CONTROL} max-w-40`}
                placeholder="20 or 15–25"
                autoComplete="off"
                defaultValue={state.typed.grams ?? ''}
              />
            )}
          </Field>
          <Button size="small" aria-label={`Save the grams of ${what}`}>
            Save
          </Button>
        </div>
      )}
    </FormFrame>
  );
}
