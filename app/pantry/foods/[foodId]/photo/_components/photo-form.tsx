'use client';

import { useState, type ChangeEvent } from 'react';
import { LARGEST_PHOTO, PHOTO_MIMES, photoSizeText, tooLargeWords } from '#lib/foods/photo-kinds';
import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { ChoiceField, TextField, type Choice } from '../../../../../_ui/form/field';
import { attachPhoto } from '../actions';
import { FILE_FIELDS } from '../schema';

interface Props {
  readonly foodId: string;
  /** The readings of the label, the one in use first. */
  readonly readings: readonly [Choice, ...Choice[]];
}

const FORM = 'attach-photo';
const FILE = { type: 'file', accept: PHOTO_MIMES.join(',') } as const;

/** Attaches a photo to a reading: a file that is there, or one that the phone takes now. */
export function PhotoForm({ foodId, readings }: Props) {
  const [tooLarge, setTooLarge] = useState('');
  const chosen = ({ currentTarget }: ChangeEvent<HTMLInputElement>) => {
    const size = currentTarget.files?.[0]?.size ?? 0;
    setTooLarge(size > LARGEST_PHOTO ? tooLargeWords(size) : '');
    // It is not sent: a browser breaks off what is far too large, and could say less about it.
    if (size > LARGEST_PHOTO) currentTarget.value = '';
  };
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
          <TextField
            form={FORM}
            name="photo"
            label="Attach a photo"
            hint={`JPEG, PNG or WebP, up to ${photoSizeText(LARGEST_PHOTO)}. Where and when it was taken is not kept.`}
            state={state}
            control={{ ...FILE, onChange: chosen }}
          />
          <div className="hidden pointer-coarse:block">
            <TextField
              form={FORM}
              name="taken"
              label="Or take it now"
              state={state}
              control={{ ...FILE, capture: 'environment', onChange: chosen }}
            />
          </div>
          <p role="alert" className="text-fine font-semibold text-hand empty:hidden">
            {tooLarge}
          </p>
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
