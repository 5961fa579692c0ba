import Link from 'next/link';
import type { ReactNode } from 'react';
import { ButtonForm } from '../../../../../_forms/button-form';
import { sourceWords } from '#lib/figures/breakdown-words';
import { ALLERGEN_WORDS } from '#lib/publish/allergen-list';
import { followingParts } from '#lib/foods/merge-foods';
import type { Merge } from '#lib/store/merge-foods';
import { mergeFoods } from '../actions';
import type { Foreseen } from '../foreseen';
import { movedWords } from '../moved-words';
import { DishesForeseen } from './dishes-foreseen';

interface Props {
  readonly merge: Merge;
  readonly foreseen: Foreseen;
}

/** What merging two foods does, told before it is done, and the button that does it. */
export function MergeView({ merge, foreseen }: Props) {
  const { from, into } = merge;
  const { allergens } = followingParts(from.food, into.food);
  const locked = foreseen.changed.filter(({ episode }) => episode.locked);
  return (
    <section aria-labelledby="merge" className="max-w-3xl">
      <h2 id="merge">What happens</h2>
      <dl className="mt-3 grid gap-x-6 gap-y-1 md:grid-cols-[auto_1fr]">
        <Fact name="Becomes part of the other">
          <b className="font-semibold">{from.food.name}</b>{' '}
          <span className="text-fine text-soft">{sourceWords(from.food.version)}</span>
        </Fact>
        <Fact name="Stays">
          <b className="font-semibold">{into.food.name}</b>{' '}
          <span className="text-fine text-soft">{sourceWords(into.food.version)}</span>
        </Fact>
        <Fact name="Moves with it">{movedWords(merge)}</Fact>
        {allergens.length > 0 && (
          <Fact name="Allergens that come with it">
            {allergens
              .map(({ allergen, standing }) =>
                standing === 'mayContain'
                  ? `may contain ${ALLERGEN_WORDS[allergen]}`
                  : ALLERGEN_WORDS[allergen],
              )
              .join(', ')}
          </Fact>
        )}
      </dl>
      <p className="mt-2 text-fine text-soft">
        The values of {into.food.name} hold from then on. The label readings of {from.food.name}{' '}
        stay with it. What you said is not in it is not carried over: say it again there.
      </p>
      <DishesForeseen foreseen={foreseen} />
      {locked.length > 0 && (
        <p className="mt-3 border-l-[6px] border-hand pl-3">
          The numbers locked for {locked.map(({ episode }) => episode.title).join(', ')} stay as
          they were. The episode then says that its lock does not hold any more.
        </p>
      )}
      <div className="mt-6 flex flex-wrap items-center gap-x-5 gap-y-3">
        <ButtonForm
          action={mergeFoods}
          values={{ from: from.id, into: into.id }}
          tone="go"
          size="usual"
        >
          Make it part of {into.food.name}
        </ButtonForm>
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/pantry/foods/${from.id}/merge`}
        >
          Choose another
        </Link>
      </div>
    </section>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <>
      <dt className="text-soft">{name}</dt>
      <dd className="max-md:mb-2">{children}</dd>
    </>
  );
}
