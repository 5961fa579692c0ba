'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import type { FormState } from '../../../../../_ui/form/form-state';
import { addFromDraft } from '../actions';
import { PART_KINDS } from '../part-kinds';
import { PartTick } from './part-tick';
import type { DraftView, OfferView } from './view';

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
  return <Tick name={key} kind={PART_KINDS[kind]} {...{ words, has, from, said, state }} />;
}

interface TickProps {
  readonly name: string;
  readonly kind: string;
  readonly words: string;
  readonly has?: string | null;
  readonly from: string;
  readonly said: string;
  readonly state: FormState;
}

function Tick({ state, has = null, ...part }: TickProps) {
  const isSent = Object.keys(state.typed).length > 0;
  const ticked = isSent ? state.typed[part.name] === 'on' : has === null;
  return <PartTick {...part} form="draft" has={has} ticked={ticked} />;
}
