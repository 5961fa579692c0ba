import Link from 'next/link';
import { FocusHere } from '../../_components/focus-here';
import { SlateHead } from '../../../../_ui/slate-head';
import type { Dish } from '#lib/episode/context';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import type { Nutrient } from '#lib/foods/nutrients';
import { nutrientLabel } from '#lib/swap/amount-words';
import type { FitRow } from '#lib/swap/fit-form-rows';
import type { FitAsked } from '#lib/swap/fit-wish';
import type { RecipeFit } from '#lib/swap/recipe-fit';
import { goalWords } from '../goal-words';
import { FitForm, type LimitRow } from './fit-form';
import { Found } from './found';

/** What the page of a fit draws from. */
export interface FitPage {
  readonly file: EpisodeFile;
  readonly dish: Dish;
  readonly asked: FitAsked;
  /** Targets of the episode that the dish has a say in. */
  readonly targets: readonly Target[];
  readonly nutrients: readonly Nutrient[];
  readonly rows: readonly FitRow[];
  readonly was: string;
  /** What was found; null where nothing was asked yet. */
  readonly fit: RecipeFit | null;
  readonly problems: readonly string[];
}

/** A dish fitted to what it should come to: what is asked, and the amounts that were found. */
export function FitView({ page }: { readonly page: FitPage }) {
  const { file, dish, asked, fit, problems } = page;
  const { id } = file.episode;
  return (
    <>
      <SlateHead kind="Recipe fit" title={dish.title} />
      <p className="mb-6 max-w-[70ch] text-soft">
        Say what the dish should come to, and how each ingredient may change. The amounts that meet
        it with the least change are looked for, in steps that you can cook. Figures are for
        information, not dietary or medical advice.
      </p>
      <div className="grid grid-cols-1 gap-x-12 gap-y-10 lg:grid-cols-2">
        <section
          id="found"
          tabIndex={-1}
          aria-labelledby="found-head"
          className="min-w-0 outline-none lg:order-2"
        >
          <FocusHere id="found" of={JSON.stringify(asked)} />
          <h2 id="found-head">What was found</h2>
          <div className="mt-2">
            {problems.length > 0 && (
              <div role="alert" className="border-l-[6px] border-hand py-1 pl-3">
                {problems.map((message) => (
                  <p key={message} className="font-semibold text-hand">
                    {message}
                  </p>
                ))}
              </div>
            )}
            {fit === null && problems.length === 0 && (
              <p className="text-soft">Nothing has been looked for yet.</p>
            )}
            {fit && (
              <Found
                episodeId={id}
                segmentId={dish.id}
                was={page.was}
                fit={fit}
                strict={asked.strict}
                goal={(target) => goalWords(file, target)}
              />
            )}
          </div>
        </section>
        <div className="min-w-0 print:hidden">
          <FitForm
            key={JSON.stringify(asked)}
            hidden={{ episodeId: id, segmentId: dish.id }}
            targets={page.targets.map((target) => ({
              id: target.id,
              words: goalWords(file, target),
              ticked: asked.targets.includes(target.id),
            }))}
            limits={page.nutrients.map((nutrient) => limitRow(nutrient, page))}
            parts={[
              { value: '', words: 'the whole dish' },
              ...dish.recipe.portions
                .filter(({ kind }) => kind !== 'mass')
                .map((portion) => ({
                  value: portion.id,
                  words:
                    portion.kind === 'count' ? `one of ${portion.of}` : portion.name || 'a portion',
                })),
            ]}
            part={asked.portionId ?? ''}
            lines={page.rows}
            strict={asked.strict}
          />
        </div>
      </div>
      <p className="mt-8 print:hidden">
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/episodes/${id}#row-${dish.id}`}
        >
          To the dish
        </Link>
      </p>
    </>
  );
}

function limitRow(nutrient: Nutrient, { asked, file }: FitPage): LimitRow {
  const { limits } = asked;
  const of = (relation: 'atLeast' | 'atMost') => {
    const found = limits.find((each) => each.nutrient === nutrient && each.relation === relation);
    return found ? String(found.amount) : '';
  };
  const label = nutrientLabel(nutrient, file.episode.region);
  return { nutrient, label, least: of('atLeast'), most: of('atMost') };
}
