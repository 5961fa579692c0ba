import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import type { Dish } from '#lib/episode/context';
import {
  boundedValues,
  boundOffers,
  offerWords,
  rangeFromZero,
  type BoundedValue,
  type BoundOffer,
} from '#lib/figures/bound-offer';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { countAllAsRanges, countAsRange, giveBackRange } from '../bound-actions';
import { BoundForm } from './bound-form';
import { KeepFocus } from './keep-focus';
import { revOf, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

/** Beside a dish's figures: values so small that they can be counted as a range, each with one press. */
export function BoundOffers({ view, dish }: Props) {
  const offers = boundOffers(view.file, view.figures, dish.id).filter((each) => each.negligible);
  if (offers.length === 0) return null;
  const values = { episodeId: view.file.episode.id, recipeId: dish.recipe.id };
  return (
    <section aria-label={`Too small to matter: ${dish.title}`} className="mt-5 print:hidden">
      <div className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 border-b-[1.5px] border-ink pb-1">
        <h3>Missing, and too small to matter</h3>
        {offers.length > 1 && (
          <ButtonForm action={countAllAsRanges} values={values} tone="plain">
            Count all {offers.length} as ranges
          </ButtonForm>
        )}
      </div>
      <KeepFocus left={offers.length}>
        <ul>
          {offers.map((offer) => (
            <li
              key={`${offer.lineId} ${offer.nutrient}`}
              className="hatch flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 border-b border-line py-1.5"
            >
              <span className="min-w-0">{offerWords(offer, view.numbers, dish.id)}</span>
              <Count view={view} offer={offer} />
            </li>
          ))}
        </ul>
      </KeepFocus>
    </section>
  );
}

function Count({ view, offer }: { readonly view: EpisodeView; readonly offer: BoundOffer }) {
  const { lineId, nutrient, maxPer100, text, top } = offer;
  const range = rangeFromZero(nutrient, top);
  return (
    <ButtonForm
      action={countAsRange}
      values={{ ...idsOf(view, lineId), nutrient, maxPer100 }}
      tone="plain"
      label={`Count it as ${range}: ${text}`}
    >
      Count it as {range}
    </ButtonForm>
  );
}

/**
 * In an ingredient's own form: every value that its source does not state and that a dish's figure lacks, to be
 * counted up to a maximum that can be changed; and those that are counted so, to be given back.
 */
export function LineGaps({ view, dish, lineId }: Props & { readonly lineId: string }) {
  const own = (each: { readonly lineId: string }) => each.lineId === lineId;
  const offers = boundOffers(view.file, view.figures, dish.id).filter(own);
  const bounded = boundedValues(view.file, dish).filter(own);
  if (offers.length + bounded.length === 0) return null;
  return (
    <Disclosure words="What its source does not say" open={bounded.length > 0}>
      <ul className="max-w-3xl">
        {bounded.map((value) => (
          <li key={value.nutrient} className="border-b border-line py-2">
            <Counted view={view} value={value} />
            <BoundForm
              id={`bound-${lineId}-${value.nutrient}`}
              values={{ ...idsOf(view, lineId), nutrient: value.nutrient }}
              unit={NUTRIENTS[value.nutrient].unit}
              what={`${NUTRIENTS[value.nutrient].label} of ${value.text}`}
              maxPer100={value.maxPer100}
            />
          </li>
        ))}
        {offers.map((offer) => (
          <li key={offer.nutrient} className="border-b border-line py-2">
            <p className="mb-1">{offerWords(offer, view.numbers, dish.id)}</p>
            <BoundForm
              id={`bound-${lineId}-${offer.nutrient}`}
              values={{ ...idsOf(view, lineId), nutrient: offer.nutrient }}
              unit={NUTRIENTS[offer.nutrient].unit}
              what={`${NUTRIENTS[offer.nutrient].label} of ${offer.text}`}
              maxPer100={offer.maxPer100}
            />
          </li>
        ))}
      </ul>
    </Disclosure>
  );
}

/** Under an ingredient: which of its values are counted as a range, each to be given back. */
export function BoundedNotes({
  view,
  values,
}: {
  readonly view: EpisodeView;
  readonly values: readonly BoundedValue[];
}) {
  return values.map((value) => (
    <div key={value.nutrient} className="text-fine text-soft">
      <Counted view={view} value={value} />
    </div>
  ));
}

function Counted({ view, value }: { readonly view: EpisodeView; readonly value: BoundedValue }) {
  const { lineId, nutrient, text } = value;
  return (
    <>
      {countedWords(value)}{' '}
      <ButtonForm
        action={giveBackRange}
        values={{ ...idsOf(view, lineId), nutrient }}
        label={`Leave it missing: ${NUTRIENTS[nutrient].label} of ${text}`}
      >
        Leave it missing
      </ButtonForm>
    </>
  );
}

function countedWords({ nutrient, top, maxPer100, idle }: BoundedValue): string {
  const { unit, label } = NUTRIENTS[nutrient];
  if (idle) return `${label}: its source states it now, so the range is not counted`;
  if (top === null) return `${label} counted as 0 to ${maxPer100} ${unit} in 100 g`;
  return `counted as ${rangeFromZero(nutrient, top)}`;
}

function idsOf(view: EpisodeView, lineId: string) {
  return { episodeId: view.file.episode.id, lineId, rev: revOf(view, lineId) };
}
