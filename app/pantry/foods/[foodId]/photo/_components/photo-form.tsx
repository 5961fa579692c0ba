'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { ChoiceField, type Choice } from '../../../../../_ui/form/field';
import { attachPhoto } from '../actions';
import { FILE_FIELDS } from '../file-fields';
import { PhotoFields } from './photo-fields';

interface Props {
  readonly foodId: string;
  /** The readings of the label, the one in use first. */
  readonly readings: readonly [Choice, ...Choice[]];
}

const FORM = 'attach-photo';

/** Attaches a photo to a reading of a label. */
export function PhotoForm({ foodId, readings }: Props) {
  const [inUse] = readings;
  const several = readings.length > 1;
  return (
    <FormFrame
      id={FORM}
      action={attachPhoto}
      fields={FILE_FIELDS}
      hidden={several ? { foodId } : { foodId, versionId: inUse.value }}
    >
      {(state, pending) => (
        <div className="grid gap-3">
          <PhotoFields form={FORM} state={state} />
          {several && (
            <ChoiceField
              form={FORM}
              name="versionId"
              label="It shows"
              state={state}
              choices={readings}
              initial={inUse.value}
            />
          )}
          <div>
            <Button aria-disabled={pending || undefined}>Attach the photo</Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}
