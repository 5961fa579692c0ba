'use client';

import { useState, type ChangeEvent } from 'react';
import { LARGEST_PHOTO, PHOTO_MIMES, photoSizeText, tooLargeWords } from '#lib/foods/photo-kinds';
import { TextField } from '../../../../../_ui/form/field';
import type { FormState } from '../../../../../_ui/form/form-state';

const FILE = { type: 'file', accept: PHOTO_MIMES.join(',') } as const;

/** The two fields for a photo: a file that is there, and on a phone one that its camera takes now. */
export function PhotoFields({ form, state }: { readonly form: string; readonly state: FormState }) {
  const [tooLarge, setTooLarge] = useState('');
  const chosen = ({ currentTarget }: ChangeEvent<HTMLInputElement>) => {
    const size = currentTarget.files?.[0]?.size ?? 0;
    setTooLarge(size > LARGEST_PHOTO ? tooLargeWords(size) : '');
    // It is not sent: of what is far too large the server could say less, and later.
    if (size > LARGEST_PHOTO) currentTarget.value = '';
  };
  return (
    <div className="grid gap-3">
      <TextField
        form={form}
        name="photo"
        label="A photo of the panel"
        hint={`JPEG, PNG or WebP, up to ${photoSizeText(LARGEST_PHOTO)}. Where and when it was taken is not kept.`}
        state={state}
        control={{ ...FILE, onChange: chosen }}
      />
      <div className="hidden pointer-coarse:block">
        <TextField
          form={form}
          name="taken"
          label="Or take it now"
          state={state}
          control={{ ...FILE, capture: 'environment', onChange: chosen }}
        />
      </div>
      <p role="alert" className="text-fine font-semibold text-hand empty:hidden">
        {tooLarge}
      </p>
    </div>
  );
}
