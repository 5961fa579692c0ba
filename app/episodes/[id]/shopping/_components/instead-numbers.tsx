import { Balance } from '../../../../_ui/balance';
import type { TakenInstead } from '#lib/overview/taken-instead';
import { SHORT_VERDICTS } from '#lib/figures/limit-words';

const STATES = { met: 'agrees', cannotTell: 'edge', missed: 'off', unknown: 'unknown' } as const;

/** What another label does to the dishes and their targets, before it is paid. */
export function InsteadNumbers({ taken }: { readonly taken: readonly TakenInstead[] }) {
  return (
    <div role="status" className="mt-3">
      {taken.map(({ episodeId, title, dishes, targets }) => (
        <section key={episodeId} aria-label={`With this, in ${title}`}>
          <h4 className="font-semibold">With this, in {title}</h4>
          <ul>
            {dishes.map(({ segmentId, title: dish, numbers }) => (
              <li key={segmentId} className="border-b border-line py-1">
                {dish}, the whole dish:{' '}
                {numbers.map(({ nutrient, label, unit, before, after }) => (
                  <span key={nutrient} className="mr-4 inline-block">
                    {label} {before} → <b>{after}</b> {unit}
                  </span>
                ))}
              </li>
            ))}
          </ul>
          <ul className="mt-2">
            {targets.map(({ targetId, words, before, after, told }) => (
              <li key={targetId} className="py-1">
                {words}
                {before !== after && (
                  <span className="text-soft"> (so far {SHORT_VERDICTS[before]})</span>
                )}
                <Balance verdict={STATES[after]} words={told} />
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
