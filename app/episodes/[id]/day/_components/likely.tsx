import type { DayPage } from './view';

const LIST = 'mt-1 list-disc pl-5';

/** How likely the wrap and what the day promises are, what helps, and what to cut first. */
export function LikelyDay({ page }: { readonly page: DayPage }) {
  const { likely } = page;
  if (likely === null) return null;
  const { weakest, loose, always, alsoHelps, chain } = likely;
  return (
    <section aria-labelledby="likely" className="mt-10 max-w-3xl">
      <h2 id="likely">How likely</h2>
      <p className="mt-1">{likely.wrap}</p>
      {weakest === null ? null : (
        <p className="mt-1">
          The weakest promise is {weakest.often}: {weakest.promise}
        </p>
      )}
      <p className="mt-1">{likely.helps}</p>
      {likely.cut === null ? null : <p className="mt-1">{likely.cut}</p>}
      {loose.length + always.length === 0 ? null : (
        <details className="mt-1">
          <summary className="link content-center">Every promise</summary>
          <ul className={LIST}>
            {loose.map(({ promise, often, between }) => (
              <li key={promise}>
                {promise}{' '}
                <span className="text-soft">
                  {often}, likely {between}
                </span>
              </li>
            ))}
          </ul>
          {always.length === 0 ? null : (
            <>
              <p className="mt-2 text-soft">{likely.alwaysKept}</p>
              <ul className={LIST}>
                {always.map(({ promise }) => (
                  <li key={promise}>{promise}</li>
                ))}
              </ul>
            </>
          )}
        </details>
      )}
      <details>
        <summary className="link content-center">What the wrap hangs on</summary>
        <p className="mt-1 text-soft">
          The chain that the wrap hangs on most often; beside each step, on how many days it hangs
          on that step.
        </p>
        <ol className="mt-1 list-decimal pl-8">
          {chain.map(({ id, title, often }) => (
            <li key={id}>
              {title} <span className="text-soft">{often}</span>
            </li>
          ))}
        </ol>
        {alsoHelps.length === 0 ? null : (
          <>
            <p className="mt-2 text-soft">What else helps, one at a time:</p>
            <ul className={LIST}>
              {alsoHelps.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
          </>
        )}
        <p className="mt-2 text-fine text-soft">{likely.how}</p>
      </details>
    </section>
  );
}
