'use client';

import { usePathname } from 'next/navigation';
import { Fragment, useEffect, useRef, useState, type ReactNode } from 'react';
import { Button, ButtonLink } from '../_ui/button';
import { ErrorList } from '../_ui/form/error-list';
import { UNTOUCHED, type FormState } from '../_ui/form/form-state';
import { ButtonForm } from './button-form';
import type { FormAction } from './parse-then-act';
import { forgetHere, useKeptHere, useSentForm } from './use-sent-form';

/** What was typed into this form on an earlier visit and refused, as the server kept it. */
export interface KeptTyping {
  readonly texts: Readonly<Record<string, string>>;
  /** The texts as they stand now. */
  readonly standing: Readonly<Record<string, string>>;
  /** When it was typed, in words. */
  readonly when: string;
  /** Stands in the fields already. */
  readonly using: boolean;
  readonly useHref: string;
  readonly throwAway: FormAction;
  readonly values: Readonly<Record<string, string | number>>;
}

interface Props {
  /** Unique on the page; the ids of the fields begin with it. */
  readonly id: string;
  readonly action: FormAction;
  /** Names of the fields that are seen, so that a fault can lead to its own; some forms show more once they were sent. */
  readonly fields: readonly string[] | ((state: FormState) => readonly string[]);
  /** Sent with the rest: the rows that the form is about. */
  readonly hidden?: Readonly<Record<string, string | number>>;
  /** Null where nothing was kept; left out where the server keeps nothing of this form. */
  readonly kept?: KeptTyping | null | undefined;
  readonly children: (state: FormState, pending: boolean) => ReactNode;
}

/** A form that says its faults, keeps what was typed, and works before any script has loaded. */
export function FormFrame(props: Props) {
  // Taking up what was kept begins the form anew.
  return <Frame key={props.kept?.using ? 'kept' : 'fresh'} {...props} />;
}

function Frame({ id, action, fields, hidden = {}, kept, children }: Props) {
  const name = `typed ${usePathname()} ${id}`;
  const initial = kept?.using
    ? { ...UNTOUCHED, typed: kept.texts, theirs: kept.standing }
    : UNTOUCHED;
  const { state: sent, pending, form } = useSentForm(action, initial, name, kept !== undefined);
  const here = useKeptHere(name);
  const [used, setUsed] = useState<FormState | null>(null);
  const state = used ?? sent;
  const element = useRef<HTMLFormElement>(null);
  const { round } = state;
  // The fields begin anew after each success, and the next entry can be typed at once.
  useEffect(() => {
    if (round === 0) return;
    const first = 'input:not([type=hidden]), textarea, select';
    element.current?.querySelector<HTMLElement>(first)?.focus();
  }, [round]);
  const untouched = sent.attempt === 0 && used === null;
  return (
    <>
      {kept && !kept.using && untouched && (
        <Offer when={kept.when}>
          <ButtonLink href={kept.useHref} size="small" scroll={false}>
            Use it
          </ButtonLink>
          <ButtonForm action={kept.throwAway} values={kept.values} tone="hand">
            Throw it away
          </ButtonForm>
        </Offer>
      )}
      {here && untouched && (
        <Offer when={new Date(here.at).toLocaleString()}>
          <Button
            type="button"
            size="small"
            onClick={() => setUsed({ ...UNTOUCHED, typed: here.typed })}
          >
            Use it
          </Button>
          <Button type="button" tone="hand" size="small" onClick={() => forgetHere(name)}>
            Throw it away
          </Button>
        </Offer>
      )}
      <form
        ref={element}
        id={id}
        action={form.action}
        onSubmit={(event) => {
          setUsed(null);
          form.onSubmit(event);
        }}
        noValidate
        aria-busy={pending}
      >
        <ErrorList
          form={id}
          state={state}
          fields={typeof fields === 'function' ? fields(state) : fields}
        />
        <Theirs state={state} />
        {Object.entries(hidden).map(([field, value]) => (
          <input
            key={field}
            type="hidden"
            name={field}
            value={field === 'rev' ? (state.rev ?? value) : value}
          />
        ))}
        <Fragment key={`${round} ${used ? 'used' : ''}`}>{children(state, pending)}</Fragment>
      </form>
    </>
  );
}

function Offer({ when, children }: { readonly when: string; readonly children: ReactNode }) {
  return (
    <div role="group" aria-label="Not saved" className="mb-4 border-l-[6px] border-hand py-1 pl-3">
      <p>What you typed on {when} was not saved.</p>
      <div className="mt-1 flex flex-wrap items-center gap-3">{children}</div>
    </div>
  );
}

/** What stands elsewhere in fields that no plain text shows: told under `…Words`. */
function Theirs({ state: { theirs = {}, typed } }: { readonly state: FormState }) {
  const told = Object.entries(theirs).filter(([key]) => {
    const field = key.replace(/Words$/, '');
    return field !== key && theirs[field] !== (typed[field] ?? '');
  });
  if (told.length === 0) return null;
  return (
    <ul className="mb-3 border-l-[3px] border-ink pl-3">
      {told.map(([key, words]) => (
        <li key={key}>Saved there now: {words}</li>
      ))}
    </ul>
  );
}
