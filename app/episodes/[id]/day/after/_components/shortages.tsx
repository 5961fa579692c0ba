import { shortageText, type Shortage } from '#lib/shopping/shortage';

/** Foods of which more was weighed than the pantry held; nothing where there are none. */
export function Shortages({ shortages }: { readonly shortages: readonly Shortage[] }) {
  if (shortages.length === 0) return null;
  return (
    <section aria-labelledby="shortages" className="mt-10">
      <h2 id="shortages">Short in the pantry</h2>
      <p className="mt-1 max-w-[65ch] text-soft">
        What was weighed came out of the pantry, the first to expire first. These were short: count
        what is left, and the next list is right.
      </p>
      <ul className="mt-2">
        {shortages.map((shortage) => (
          <li key={shortage.foodId} className="py-1">
            <a className="link" href={`/pantry/foods/${shortage.foodId}`}>
              {shortageText(shortage)}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
