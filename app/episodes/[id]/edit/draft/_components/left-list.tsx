import type { LeftView } from './view';

/** Lines that are told at once; the rest are counted. */
const TOLD = 200;

/** What was not understood, or stays out on purpose: each line with its words and why. */
export function LeftList({ left }: { readonly left: readonly LeftView[] }) {
  if (left.length === 0) return null;
  return (
    <section aria-labelledby="left-out" className="mt-10 max-w-4xl">
      <h2 id="left-out">Left out</h2>
      <p className="mt-1 text-soft">
        These lines became no part of the episode. They stay in its texts, and the numbers in them
        are judged there.
      </p>
      <ul className="mt-3 border-t border-line">
        {left.slice(0, TOLD).map(({ from, said, message }, index) => (
          <li key={`${index} ${from}`} className="border-b border-line py-2">
            <span className="text-fine text-soft">{from}</span>
            {said !== '' && <span className="block wrap-anywhere">“{said}”</span>}
            <span className="block text-fine">{message}</span>
          </li>
        ))}
        {left.length > TOLD && <li className="py-2">And {left.length - TOLD} more.</li>}
      </ul>
    </section>
  );
}
