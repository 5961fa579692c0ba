'use client';

import { FormFrame } from '../../../../../_forms/form-frame';
import { Button } from '../../../../../_ui/button';
import { AreaField } from '../../../../../_ui/form/field';
import type { FormState } from '../../../../../_ui/form/form-state';
import { PartTick } from '../../draft/_components/part-tick';
import { pasteRecipe } from '../actions';
import { recipeOffer, type RecipeOffer } from '../view';

const FORM = 'recipe';

/** What was offered last; null before anything was read. */
function offerIn({ typed }: FormState): RecipeOffer | null {
  try {
    return recipeOffer.parse(JSON.parse(typed.offer ?? ''));
  } catch {
    return null;
  }
}

/** A recipe's data: its text, and once it was read all that is in it, each with a tick and its line. */
export function RecipeForm({ episodeId }: { readonly episodeId: string }) {
  return (
    <FormFrame id={FORM} action={pasteRecipe} fields={['text']} hidden={{ episodeId }}>
      {(state, pending) => {
        const offer = offerIn(state);
        return (
          <div className="grid max-w-4xl gap-6">
            <AreaField
              form={FORM}
              name="text"
              label="Recipe data, or the HTML of its page"
              hint="JSON-LD in the words of schema.org. Its numbers are no facts: they are held against the ingredients."
              state={state}
              control={{ rows: 8, spellCheck: false }}
            />
            <input type="hidden" name="version" value={offer?.version ?? ''} />
            <div>
              <Button
                tone={offer ? 'plain' : 'go'}
                name="act"
                value="read"
                aria-disabled={pending || undefined}
              >
                {offer ? 'Read it again' : 'Read the recipe'}
              </Button>
            </div>
            {offer && <Offer key={state.attempt} offer={offer} state={state} pending={pending} />}
          </div>
        );
      }}
    </FormFrame>
  );
}

interface OfferProps {
  readonly offer: RecipeOffer;
  readonly state: FormState;
  readonly pending: boolean;
}

function Offer({ offer, state, pending }: OfferProps) {
  const { dishes, left, more, version } = offer;
  // What was shown before keeps its ticks; what is new is ticked as it is offered.
  const isShown = state.typed.version === version;
  return (
    <>
      {dishes.length === 0 && <p>The episode has all that is in it: nothing more is offered.</p>}
      {dishes.map(({ title, isNew, ticks }, at) => (
        <fieldset key={at} className="min-w-0 border-t-[1.5px] border-ink pt-2">
          <legend className="float-left mb-1 w-full font-slate text-head font-semibold wrap-anywhere">
            {title}
          </legend>
          <div className="clear-both">
            {!isNew && <p className="text-soft">It is in the episode: what it lacks is offered.</p>}
            {ticks.map((tick) => (
              <PartTick
                {...tick}
                key={tick.key}
                form={FORM}
                name={tick.key}
                ticked={isShown ? state.typed[tick.key] === 'on' : tick.has === null}
              />
            ))}
          </div>
        </fieldset>
      ))}
      {dishes.length > 0 && (
        <div>
          <Button tone="go" name="act" value="add" aria-disabled={pending || undefined}>
            Add what is ticked
          </Button>
        </div>
      )}
      {left.length > 0 && (
        <section aria-labelledby="recipe-left">
          <h2 id="recipe-left">Left out</h2>
          <ul className="mt-2 border-t border-line">
            {left.map(({ from, said, message }, at) => (
              <li key={at} className="border-b border-line py-2">
                <span className="text-fine text-soft">{from}</span>
                {said !== '' && <span className="block wrap-anywhere">“{said}”</span>}
                <span className="block text-fine">{message}</span>
              </li>
            ))}
            {more > 0 && <li className="py-2">And {more} more.</li>}
          </ul>
        </section>
      )}
    </>
  );
}
