'use client';

import { FormFrame } from '../../_forms/form-frame';
import { Button } from '../../_ui/button';
import { saveRefuse } from '../refuse-actions';
import { REFUSE_FIELDS, RefuseFields, type RefuseTexts } from './refuse-fields';

interface Props {
  readonly foodId: string;
  /** The reading that it is said of; the values stay those of this reading. */
  readonly versionId: string;
  readonly refuse: RefuseTexts;
}

/** Peel and trim of an own food. */
export function RefuseForm({ foodId, versionId, refuse }: Props) {
  const form = 'refuse';
  return (
    <FormFrame id={form} action={saveRefuse} fields={REFUSE_FIELDS} hidden={{ foodId, versionId }}>
      {(state) => (
        <div className="grid gap-4">
          <RefuseFields form={form} state={state} refuse={refuse} />
          <div>
            <Button>Save peel and trim</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
