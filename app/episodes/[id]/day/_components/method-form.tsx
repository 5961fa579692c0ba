'use client';

import Link from 'next/link';
import { FormFrame } from '../../../../_forms/form-frame';
import { Button } from '../../../../_ui/button';
import { AreaField } from '../../../../_ui/form/field';
import type { FormState } from '../../../../_ui/form/form-state';
import { pasteMethod } from '../method-actions';
import { ruleFields, stepFields, type MethodOffer } from '../method-fields';
import { MethodSteps } from './method-steps';

interface Props {
  readonly id: string;
  readonly hidden: Readonly<Record<string, string | number>>;
  /** The method that the dish has as its text. */
  readonly method: string;
  /** How many steps the dish has already. */
  readonly has: number;
  readonly cancelHref: string;
}

/** What was offered last; null before anything was read. */
function offerIn({ typed }: FormState): MethodOffer | null {
  if (!typed.offer) return null;
  try {
    return JSON.parse(typed.offer) as MethodOffer;
  } catch {
    return null;
  }
}

function fieldsOf(state: FormState): readonly string[] {
  const offer = offerIn(state);
  return [
    'method',
    ...(offer?.steps ?? []).flatMap(({ key }) => Object.values(stepFields(key))),
    ...(offer?.rules ?? []).flatMap(({ name }) => Object.values(ruleFields(name))),
  ];
}

/** A method that becomes steps: its text, and once it was read what each sentence comes to, to be ticked and changed. */
export function MethodForm({ id, hidden, method, has, cancelHref }: Props) {
  return (
    <FormFrame id={id} action={pasteMethod} fields={fieldsOf} hidden={hidden}>
      {(state, pending) => {
        const offer = offerIn(state);
        return (
          <div className="grid gap-4">
            {has > 0 && (
              <p>
                This dish has {has === 1 ? 'a step' : `${has} steps`} already: what you add comes
                after.
              </p>
            )}
            <div className="max-w-3xl">
              <AreaField
                form={id}
                name="method"
                label="Method"
                hint="As it is written for the viewer, or as pasted from a note. Nothing is added before you say so; what you add is kept with this text, which the description shows."
                state={state}
                initial={method}
                control={{ rows: 7, spellCheck: false }}
              />
            </div>
            <input type="hidden" name="read" value={offer ? (state.typed.read ?? '') : ''} />
            <p className="flex flex-wrap items-center gap-3">
              <Button
                tone={offer ? 'plain' : 'go'}
                name="act"
                value="read"
                aria-disabled={pending || undefined}
              >
                {offer ? 'Read it again' : 'Read the method'}
              </Button>
              <Button tone="plain" name="act" value="keep" aria-disabled={pending || undefined}>
                Keep the text, no steps
              </Button>
              {!offer && <Leave href={cancelHref} />}
            </p>
            {offer && (
              // What was read begins anew with each answer, so that its fields show what came back.
              <div key={state.attempt} className="grid gap-4">
                <MethodSteps form={id} state={state} offer={offer} />
                <p className="flex flex-wrap items-center gap-3">
                  <Button tone="go" name="act" value="add" aria-disabled={pending || undefined}>
                    Add these steps
                  </Button>
                  <Leave href={cancelHref} />
                </p>
              </div>
            )}
          </div>
        );
      }}
    </FormFrame>
  );
}

function Leave({ href }: { readonly href: string }) {
  return (
    <Link href={href} className="link inline-flex min-h-14 items-center px-2">
      Leave as it was
    </Link>
  );
}
