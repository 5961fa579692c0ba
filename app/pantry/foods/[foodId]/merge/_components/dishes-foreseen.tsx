import Link from 'next/link';
import type { Foreseen } from '../foreseen';

/** Numbers of a dish that are told at most; the others are counted. */
const TOLD = 5;

/** The dishes whose numbers a merging moves, with the numbers before and after. */
export function DishesForeseen({ foreseen }: { readonly foreseen: Foreseen }) {
  const { changed, unchanged, notWorkedOut } = foreseen;
  return (
    <>
      <h3 className="mt-6">Dishes that come out otherwise</h3>
      {changed.length === 0 && notWorkedOut.length === 0 && (
        <p className="mt-1">None: every dish keeps its numbers.</p>
      )}
      {changed.map(({ episode, dishes }) => (
        <div key={episode.id} className="mt-2">
          <Link className="link inline-flex min-h-11 items-center" href={`/episodes/${episode.id}`}>
            {episode.title}
          </Link>
          <ul>
            {dishes.map(({ segmentId, title, numbers, lacks }) => (
              <li key={segmentId} className="border-b border-line py-1.5">
                <b className="font-semibold">{title}</b>
                <ul className="flex flex-wrap gap-x-6">
                  {numbers.slice(0, TOLD).map(({ nutrient, label, unit, before, after }) => (
                    <li key={nutrient}>
                      {label} {before} → {after} {unit}
                    </li>
                  ))}
                  {numbers.length > TOLD && (
                    <li className="text-soft">and {numbers.slice(TOLD).length} further numbers</li>
                  )}
                </ul>
                {lacks !== null && <p className="text-hand">Then missing: {lacks}.</p>}
              </li>
            ))}
          </ul>
        </div>
      ))}
      {unchanged > 0 && changed.length > 0 && (
        <p className="mt-2 text-soft">
          {unchanged === 1 ? 'One further episode keeps' : `${unchanged} further episodes keep`} all
          numbers.
        </p>
      )}
      {notWorkedOut.length > 0 && (
        <p className="mt-2">
          Older episodes that use one of the two and were not worked out here:{' '}
          {notWorkedOut.map(({ title }) => title).join(', ')}.
        </p>
      )}
    </>
  );
}
