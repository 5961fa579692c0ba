'use client';

import { Fragment, useActionState, useEffect, useRef, type ReactNode } from 'react';
import { ErrorList } from '../_ui/form/error-list';
import { UNTOUCHED, type FormState } from '../_ui/form/form-state';
import type { FormAction } from './parse-then-act';

interface Props {
  /** Unique on the page; the ids of the fields begin with it. */
  readonly id: string;
  readonly action: FormAction;
  /** Names of the fields that are seen, so that a fault can lead to its own. */
  readonly fields: readonly string[];
  /** Sent with the rest: the rows that the form is about. */
  readonly hidden?: Readonly<Record<string, string | number>>;
  readonly children: (state: FormState, pending: boolean) => ReactNode;
}

/** A form that says its faults, keeps what was typed, and works before any script has loaded. */
export function FormFrame({ id, action, fields, hidden = {}, children }: Props) {
  const [state, send, pending] = useActionState(action, UNTOUCHED);
  const element = useRef<HTMLFormElement>(null);
  const { round } = state;
  // The fields begin anew after each success, and the next entry can be typed at once.
  useEffect(() => {
    if (round === 0) return;
    const first = 'input:not([type=hidden]), textarea, select';
    element.current?.querySelector<HTMLElement>(first)?.focus();
  }, [round]);
  return (
    <form ref={element} id={id} action={send} noValidate aria-busy={pending}>
      <ErrorList form={id} state={state} fields={fields} />
      {Object.entries(hidden).map(([name, value]) => (
        <input
          key={name}
          type="hidden"
          name={name}
          value={name === 'rev' ? (state.rev ?? value) : value}
        />
      ))}
      <Fragment key={round}>{children(state, pending)}</Fragment>
    </form>
  );
}
