'use client';

import { unstable_rethrow } from 'next/navigation';
import { startTransition, useActionState, useSyncExternalStore, type SyntheticEvent } from 'react';
import { UNTOUCHED, type FormState } from '../_ui/form/form-state';
import { typedTexts, type FormAction } from './parse-then-act';

/** What was typed and not saved, as this tab keeps it. */
export interface KeptHere {
  readonly at: string;
  readonly typed: Readonly<Record<string, string>>;
}

const CHANGED = 'typed-here-changed';

const NO_ANSWER =
  'The program did not answer, so nothing was saved. What you typed is kept here: send it again once it answers.';

/** How a form is sent. */
export interface SentForm {
  readonly state: FormState;
  readonly pending: boolean;
  /** Spread onto the form: it is sent before any script has loaded, and watched over from then on. */
  readonly form: {
    readonly action: (form: FormData) => void;
    readonly onSubmit: (event: SyntheticEvent<HTMLFormElement, SubmitEvent>) => void;
  };
}

/**
 * Sends a form to its action. Where the server does not answer, the form says so and keeps what was typed, in
 * its fields and, under `keepAs`, in this tab until it was saved or thrown away.
 * @param keepAs the name under which this tab keeps the texts; none for a single button
 * @param keptThere whether the server keeps what it refuses, so that only its silence is kept here
 */
export function useSentForm(
  action: FormAction,
  initial: FormState = UNTOUCHED,
  keepAs: string | null = null,
  keptThere = false,
): SentForm {
  const [plain, sendPlain, plainPending] = useActionState(action, initial);
  const watched = async (previous: FormState, form: FormData): Promise<FormState> => {
    try {
      const next = await action(previous, form);
      if (next.problems.length === 0) forgetHere(keepAs);
      else if (!keptThere) keepHere(keepAs, next.typed);
      return next;
    } catch (error) {
      try {
        unstable_rethrow(error);
      } catch (leading) {
        // It was saved and leads elsewhere.
        forgetHere(keepAs);
        throw leading;
      }
      const typed = typedTexts(form);
      keepHere(keepAs, typed);
      const problem = { path: '', code: 'no-answer', message: NO_ANSWER };
      return {
        ...previous,
        typed,
        done: '',
        attempt: previous.attempt + 1,
        problems: [problem],
      };
    }
  };
  const [sent, send, pending] = useActionState(watched, plain);
  const onSubmit: SentForm['form']['onSubmit'] = (event) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget, event.nativeEvent.submitter);
    startTransition(() => send(form));
  };
  return {
    state: plain.attempt > sent.attempt ? plain : sent,
    pending: pending || plainPending,
    form: { action: sendPlain, onSubmit },
  };
}

function keepHere(name: string | null, typed: KeptHere['typed']): void {
  if (name === null) return;
  try {
    const kept: KeptHere = { at: new Date().toISOString(), typed };
    window.sessionStorage.setItem(name, JSON.stringify(kept));
    window.dispatchEvent(new Event(CHANGED));
  } catch {
    // No room, or storage is switched off: the fields still hold it.
  }
}

/** Throws away what this tab keeps under a name. */
export function forgetHere(name: string | null): void {
  if (name === null) return;
  try {
    window.sessionStorage.removeItem(name);
    window.dispatchEvent(new Event(CHANGED));
  } catch {
    // Storage is switched off: there is nothing to throw away.
  }
}

function read(name: string): string | null {
  try {
    return window.sessionStorage.getItem(name);
  } catch {
    return null;
  }
}

function subscribe(tell: () => void): () => void {
  window.addEventListener(CHANGED, tell);
  return () => window.removeEventListener(CHANGED, tell);
}

/** What this tab keeps under a name; null where nothing is. */
export function useKeptHere(name: string): KeptHere | null {
  const text = useSyncExternalStore(
    subscribe,
    () => read(name),
    () => null,
  );
  if (text === null) return null;
  try {
    return JSON.parse(text) as KeptHere;
  } catch {
    return null;
  }
}
