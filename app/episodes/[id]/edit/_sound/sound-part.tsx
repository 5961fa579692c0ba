'use client';

import { Button } from '../../../../_ui/button';
import { CONTROL } from '../../../../_ui/form/field';
import type { Sound } from './use-sound';

/** The sound of the edit, to hear what captions may have misheard. It never leaves this machine. */
export function SoundPart({ sound }: { readonly sound: Sound }) {
  return (
    <div className="mb-4">
      {sound.name === null ? (
        <details>
          <summary className="link min-h-11 content-center">Hear what was said</summary>
          <div className="max-w-3xl pb-3">
            <label htmlFor="sound" className="mb-1 block font-semibold">
              The sound of the edit
            </label>
            <p id="sound-hint" className="mb-1 text-fine text-soft">
              It is kept in this browser, on this machine, and goes nowhere else.
            </p>
            <input
              id="sound"
              type="file"
              accept="audio/*,video/*"
              aria-describedby="sound-hint"
              className={CONTROL}
              onChange={({ currentTarget }) => {
                const file = currentTarget.files?.[0];
                if (file) sound.choose(file);
              }}
            />
          </div>
        </details>
      ) : (
        <p className="flex flex-wrap items-center gap-x-4 gap-y-1">
          <span className="wrap-anywhere">Sound: {sound.name}, on this machine alone.</span>
          <Button type="button" tone="bare" onClick={sound.forget}>
            Remove the sound
          </Button>
        </p>
      )}
      <p role="status" className={sound.told ? 'text-fine' : 'unseen'}>
        {sound.told}
      </p>
    </div>
  );
}
