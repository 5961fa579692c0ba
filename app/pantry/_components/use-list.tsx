import Link from 'next/link';
import type { FoodUse } from '#lib/store/read-food-uses';

const HOW_WORDS = {
  confirmed: '',
  proposed: 'best match, not confirmed',
  either: 'or another food',
} as const;

/** Ingredients of a food, each with its dish and episode, and the dishes that are made from that one. */
export function UseList({ uses }: { readonly uses: readonly FoodUse[] }) {
  return (
    <ul className="max-w-3xl">
      {uses.map(({ id, words, how, recipeTitle, place, within }) => (
        <li key={id} className="border-b border-line py-1.5">
          {place ? (
            <Link
              className="link inline-flex min-h-11 items-center font-semibold"
              href={`/episodes/${place.episodeId}#row-${id}`}
            >
              {words}
            </Link>
          ) : (
            <b className="font-semibold">{words}</b>
          )}{' '}
          {HOW_WORDS[how] !== '' && <span className="text-fine text-soft">{HOW_WORDS[how]}</span>}
          <span className="block text-soft">
            {place ? (
              <>
                {place.title} in {place.episodeTitle}
              </>
            ) : (
              `${recipeTitle}, a recipe that is no dish of an episode`
            )}
          </span>
          {within.map((dish) => (
            <span key={dish.recipeId} className="block text-soft">
              and so in{' '}
              <Link
                className="link inline-flex min-h-6 items-center"
                href={`/episodes/${dish.episodeId}#row-${dish.segmentId}`}
              >
                {dish.title}
              </Link>{' '}
              in {dish.episodeTitle}
            </span>
          ))}
        </li>
      ))}
    </ul>
  );
}
