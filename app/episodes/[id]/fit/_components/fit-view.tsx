import Link from 'next/link';
import { SlateHead } from '../../../../_ui/slate-head';
import { dishesOf, type Dish } from '#lib/episode/context';
import type { EpisodeFile, Target } from '#lib/episode/schema';
import { LIMIT_WORDS } from '#lib/figures/limit-words';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { FitRow } from '#lib/swap/fit-form-rows';
import type { FitAsked } from '#lib/swap/fit-wish';
import type { RecipeFit } from '#lib/swap/recipe-fit';
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
  const of = (target: Target) => partWords(file, target);
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
                of={of}
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
              words: targetWords(target, of),
              ticked: asked.targets.includes(target.id),
            }))}
            limits={page.nutrients.map((nutrient) => limitRow(nutrient, asked))}
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

function limitRow(nutrient: Nutrient, { limits }: FitAsked): LimitRow {
  const { unit, label } = NUTRIENTS[nutrient];
  const of = (relation: 'atLeast' | 'atMost') => {
    const found = limits.find((each) => each.nutrient === nutrient && each.relation === relation);
    return found ? String(found.amount) : '';
  };
  const words = nutrient === 'energyKcal' ? 'calories' : `${label}, ${unit}`;
  return { nutrient, label: words, least: of('atLeast'), most: of('atMost') };
}

function targetWords(target: Target, of: (target: Target) => string): string {
  const { unit, label } = NUTRIENTS[target.nutrient];
  const what = target.nutrient === 'energyKcal' ? 'calories' : `${unit} ${label}`;
  return `${LIMIT_WORDS[target.relation]} ${target.amount} ${what}, ${of(target)}`;
}

/** Of what a target is: 'all dishes', 'the whole dish', 'one of 3'. */
function partWords({ episode }: EpisodeFile, { segmentId, portionId }: Target): string {
  if (segmentId === null) return 'all dishes';
  const dish = dishesOf(episode.segments).find(({ id }) => id === segmentId);
  const portion = dish?.recipe.portions.find(({ id }) => id === portionId);
  if (!portion) return 'the whole dish';
  return portion.kind === 'count' ? `one of ${portion.of}` : portion.name || 'a portion';
}
