import Link from 'next/link';
import { ButtonLink } from '../../../../_ui/button';
import type { OtherUse, WrongFood } from '../other-uses';

const LOCK_WORDS: Readonly<Record<OtherUse['lock'], string>> = {
  old: 'what is locked rests on the old value',
  new: 'what is locked rests on another reading of it',
  none: 'nothing of it is locked',
};

/** Foods whose own values changed, and the other episodes that used them. */
export function WrongFoods({ foods }: { readonly foods: readonly WrongFood[] }) {
  if (foods.length === 0) return null;
  return (
    <section aria-labelledby="wrong-foods">
      <h2 id="wrong-foods">Where else the old value was used</h2>
      {foods.map((food) => (
        <div key={food.foodId} className="mt-3">
          <h3>
            <Link className="link" href={`/pantry/foods/${food.foodId}`}>
              {food.name}
            </Link>
          </h3>
          <p className="text-fine text-soft">{food.words.join('; ')}</p>
          {food.episodes.length === 0 ? (
            <p className="mt-1">No other episode used it.</p>
          ) : (
            <ul className="mt-1">
              {food.episodes.map((use) => (
                <OtherEpisode key={use.episodeId} use={use} />
              ))}
            </ul>
          )}
          {food.more > 0 && (
            <p className="mt-1">
              And {food.more} more: the food’s own page lists every ingredient of it.
            </p>
          )}
        </div>
      ))}
    </section>
  );
}

function OtherEpisode({ use }: { readonly use: OtherUse }) {
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-6 gap-y-2 border-b border-line py-2">
      <span className="min-w-0">
        <b className="font-semibold">{use.title}</b>
        {use.uses.map(({ dish, ingredient }) => (
          <span key={`${dish} ${ingredient}`} className="block">
            {dish}: {ingredient}
          </span>
        ))}
        <span
          className={`block text-fine ${use.lock === 'old' ? 'font-semibold text-hand' : 'text-soft'}`}
        >
          {LOCK_WORDS[use.lock]}
        </span>
      </span>
      <ButtonLink href={`/episodes/${use.episodeId}/corrections`} size="small">
        Its corrections<span className="unseen">: {use.title}</span>
      </ButtonLink>
    </li>
  );
}
