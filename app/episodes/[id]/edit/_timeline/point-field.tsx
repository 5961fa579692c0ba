'use client';

import type { KeyboardEvent } from 'react';
import { Button } from '../../../../_ui/button';
import { CONTROL, Field } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';

interface Props {
  readonly form: string;
  readonly name: string;
  readonly label: string;
  /** The segment, for what reads aloud. */
  readonly of: string;
  readonly text: string;
  readonly state: FormState;
  /** Frames that are numbered in a second. */
  readonly second: number;
  readonly onType: (text: string) => void;
  /** Frames, later above 0. */
  readonly onNudge: (frames: number) => void;
}

/** A timecode, typed, or moved by a frame or a second with keys or buttons. */
export function PointField({ form, name, label, of, text, state, second, onType, onNudge }: Props) {
  const keys: Readonly<Record<string, number>> = {
    ArrowUp: 1,
    ArrowDown: -1,
    PageUp: second,
    PageDown: -second,
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    const by = keys[event.key];
    if (by === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    onNudge(by);
  };
  const nudges = [
    { words: '−1 s', by: -second },
    { words: '−1 f', by: -1 },
    { words: '+1 f', by: 1 },
    { words: '+1 s', by: second },
  ];
  return (
    <Field form={form} name={name} label={label} state={state}>
      {(wired) => (
        <>
          <input
            {...wired}
            className={CONTROL}
            value={text}
            autoComplete="off"
            spellCheck={false}
            aria-label={`${of}: ${label.toLowerCase()}`}
            aria-keyshortcuts="ArrowUp ArrowDown PageUp PageDown"
            onChange={(event) => onType(event.currentTarget.value)}
            onKeyDown={onKeyDown}
          />
          <span className="mt-1 flex flex-wrap gap-1">
            {nudges.map(({ words, by }) => (
              // Keys do the same in the field, so that these are no stops on the way through it.
              <Button
                key={words}
                type="button"
                size="small"
                tabIndex={-1}
                aria-label={`${words}, ${of}: ${label.toLowerCase()}`}
                onClick={() => onNudge(by)}
              >
                {words}
              </Button>
            ))}
          </span>
        </>
      )}
    </Field>
  );
}
