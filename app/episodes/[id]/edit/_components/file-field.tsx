'use client';

import { useState } from 'react';
import { CONTROL, Field } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import { LARGEST_FILE } from '../largest-file';

/** A text file. One that is too large is refused before it is sent. */
export function FileField({ form, state }: { readonly form: string; readonly state: FormState }) {
  const [refused, setRefused] = useState('');
  return (
    <div>
      <Field
        form={form}
        name="file"
        label="Or choose a file"
        hint="It is kept in this program alone. Any text encoding will do: the program finds out which it is."
        state={state}
      >
        {(wired) => (
          <input
            {...wired}
            type="file"
            accept=".vtt,.srt,.txt,.md,text/plain,text/vtt,application/x-subrip"
            className={CONTROL}
            onChange={({ currentTarget }) => {
              const file = currentTarget.files?.[0];
              const large = file !== undefined && file.size > LARGEST_FILE;
              if (large) currentTarget.value = '';
              setRefused(large ? `${file.name} is larger than 16 MB: is it the right file?` : '');
            }}
          />
        )}
      </Field>
      {refused !== '' && (
        <p role="alert" className="mt-1 text-fine font-semibold text-hand">
          {refused}
        </p>
      )}
    </div>
  );
}
