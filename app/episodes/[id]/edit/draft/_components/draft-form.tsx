'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import type { FormState } from '../../../../../_ui/form/form-state';
import { addFromDraft } from '../actions';
import type { DraftView, OfferView } from './view';

const KIND: Readonly<Record<OfferView['kind'], string>> = {
  hook: 'First words',
  disclosure: 'Given or paid',
  link: 'Link',
  times: 'Place in the edit',
  portions: 'Portions',
  line: 'Ingredient',
  method: 'Method',
  step: 'Step',
};

/** All that the texts propose, each with a tick and the place where it was read. Nothing is added before the press. */
export function DraftForm({ view }: { readonly view: DraftView }) {
  const { episodeId, version, episode, segments } = view;
  return (
    <FormFrame id="draft" action={addFromDraft} fields={[]} hidden={{ episodeId, version }}>
      {(state, pending) => (
        <div key={state.attempt} className="grid max-w-4xl gap-8">
          {segments.map(({ key, kind, title, isNew, from, said, parts }) => (
            <fieldset key={key} className="min-w-0 border-t-[1.5px] border-ink pt-2">
              <legend className="float-left mb-1 w-full font-slate text-head font-semibold">
                {title}
              </legend>
              <div className="clear-both">
                {isNew ? (
                  <Tick
                    name={key}
                    kind={kind === 'talk' ? 'Talk' : 'Dish'}
                    words={kind === 'talk' ? 'A stretch of talk' : 'A new dish'}
                    from={from}
                    said={said === title ? '' : said}
                    state={state}
                  />
                ) : (
                  <p className="text-soft">It is in the episode: what it lacks is offered.</p>
                )}
                {parts.map((part) => (
                  <Part key={part.key} part={part} state={state} />
                ))}
              </div>
            </fieldset>
          ))}
          {episode.length > 0 && (
            <fieldset className="min-w-0 border-t-[1.5px] border-ink pt-2">
              <legend className="float-left mb-1 w-full font-slate text-head font-semibold">
                The episode
              </legend>
              <div className="clear-both">
                {episode.map((part) => (
                  <Part key={part.key} part={part} state={state} />
                ))}
              </div>
            </fieldset>
          )}
          <div>
            <Button tone="go" aria-disabled={pending || undefined}>
              Add what is ticked
            </Button>
          </div>
        </div>
      )}
    </FormFrame>
  );
}

function Part({ part, state }: { readonly part: OfferView; readonly state: FormState }) {
  const { key, kind, words, has, from, said } = part;
  const shown = said.includes(words) ? '' : said;
  return (
    <Tick
      name={key}
      kind={KIND[kind]}
      words={words}
      has={has}
      from={from}
      said={shown}
      state={state}
    />
  );
}

interface TickProps {
  readonly name: string;
  readonly kind: string;
  readonly words: string;
  readonly has?: string | null;
  readonly from: string;
  /** The words it was read from, where they are others. */
  readonly said: string;
  readonly state: FormState;
}

function Tick({ name, kind, words, has = null, from, said, state }: TickProps) {
  const id = `draft-${name}`;
  const isSent = Object.keys(state.typed).length > 0;
  const isTicked = isSent ? state.typed[name] === 'on' : has === null;
  return (
    <div className="flex min-h-11 items-start gap-3 border-b border-line py-2">
      <input
        key={String(isTicked)}
        id={id}
        name={name}
        type="checkbox"
        className="mt-0.5 size-5 shrink-0 accent-ink"
        aria-describedby={`${id}-from`}
        defaultChecked={isTicked}
      />
      <div className="min-w-0">
        <label htmlFor={id} className="block whitespace-pre-line wrap-anywhere">
          {words}
        </label>
        <p id={`${id}-from`} className="text-fine text-soft wrap-anywhere">
          {kind}, {from}
          {said !== '' && `: “${said}”`}
          {has !== null && `. The dish has “${has}” already: tick this only if it is more of it.`}
        </p>
      </div>
    </div>
  );
}
