import type { PromiseLine } from '#lib/shoot/likely-words';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { DayPage } from './view';

/** How likely the wrap and what the day promises are, what helps, and what to cut first. */
export function LikelyDay({ page }: { readonly page: DayPage }) {
  const { likely } = page;
  if (likely === null) return null;
  const { weakest, others, always, alsoHelps, chain } = likely;
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
      <details className="mt-1">
        <summary className="link content-center">Every promise</summary>
        <div className="mt-2">
          <Table
            caption="What the day promises, what is kept least often first"
            head={
              <>
                <Th>promise</Th>
                <Th>how often</Th>
                <Th number>likely between</Th>
              </>
            }
          >
            {[...(weakest === null ? [] : [weakest]), ...others, ...always].map(row)}
          </Table>
        </div>
      </details>
      <details>
        <summary className="link content-center">What the wrap hangs on</summary>
        <p className="mt-2 text-soft">
          The chain that the wrap hangs on most often, each step with how often it is part of one.
        </p>
        <ol className="mt-1 list-decimal pl-6">
          {chain.map(({ title, often }) => (
            <li key={title}>
              {title} <span className="text-soft">{often}</span>
            </li>
          ))}
        </ol>
        {alsoHelps.length === 0 ? null : (
          <>
            <p className="mt-2 text-soft">What else helps, one at a time:</p>
            <ul className="mt-1 list-disc pl-5">
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

const row = ({ promise, often, between }: PromiseLine) => (
  <Tr key={promise}>
    <RowHead>{promise}</RowHead>
    <Td>{often}</Td>
    <Td number>{between}</Td>
  </Tr>
);
