import { Disclosure } from '../../../_ui/disclosure';
import type { Dish } from '#lib/episode/context';
import type { DishFigures } from '#lib/figures/episode-figures';
import { gramsText, ratioText } from '#lib/units/read-quantity';
import { permilleTyped } from '#lib/units/read-typed';
import { EatenForm, type EatenTexts } from './eaten-form';
import { eatenWords } from './eaten-words';
import { kitchenSpread } from './portion-words';
import { revOf, type EpisodeView } from './view';
import { scaleChoices } from './weighed-words';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures | undefined;
}

/** What was eaten of a dish, which is its part of the day, and the form to say so. */
export function WhatIAte({ view, dish, figures }: Props) {
  const { episode, kitchen } = view.file;
  const open = dish.ate.kind === 'mass' && figures?.finishedMg === null;
  return (
    <section aria-label={`What I ate: ${dish.title}`}>
      <h3>What I ate</h3>
      <p className="mt-1">{eatenWords(dish)}</p>
      {open && (
        <p className="hatch mt-1 py-1 font-semibold">
          Open: weigh the finished dish, or say what cooking does to its weight.
        </p>
      )}
      <Disclosure words="Change what I ate">
        <EatenForm
          episodeId={episode.id}
          segmentId={dish.id}
          rev={revOf(view, dish.id)}
          texts={eatenTexts(dish, kitchenSpread(kitchen))}
          scales={scaleChoices(kitchen)}
        />
      </Disclosure>
    </section>
  );
}

function eatenTexts(
  { ate, eaten }: Dish,
  kitchen: { readonly spread: string; readonly spreadFrom: string },
): EatenTexts {
  const whole = eaten.num === eaten.den;
  const way =
    ate.kind === 'share' ? (whole ? 'all' : eaten.num === 0 ? 'none' : 'share') : ate.kind;
  return {
    way,
    share: ate.kind === 'mass' || whole || eaten.num === 0 ? '' : ratioText(eaten),
    spread: ate.kind === 'byEye' ? permilleTyped(ate.permille) : kitchen.spread,
    spreadFrom:
      ate.kind === 'byEye' && permilleTyped(ate.permille) !== kitchen.spread
        ? 'As you said.'
        : kitchen.spreadFrom,
    grams: ate.kind === 'mass' ? gramsText(ate) : '',
  };
}
