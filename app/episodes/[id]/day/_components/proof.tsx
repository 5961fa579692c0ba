import { levelLines, proofText, searchText } from '#lib/shoot/proof-words';
import { ButtonForm } from '../../../../_forms/button-form';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import { keepOrder } from '../actions';
import { SearchProgress } from './search-progress';
import { dayHref, type DayPage } from './view';

/** How good the order is: what is proven of it, or how far the search for a better one is. */
export function Proof({ page }: { readonly page: DayPage }) {
  const { plan, searching, file } = page;
  if (plan.entries.length === 0) return null;
  if (searching) {
    return (
      <div className="mb-4 flex flex-wrap items-center gap-x-4 gap-y-2">
        <SearchProgress address={dayHref(page, '/search')} first={searchText(null)} />
        <ButtonForm action={keepOrder} values={{ episodeId: file.episode.id, dayId: page.day.id }}>
          Keep this order
        </ButtonForm>
      </div>
    );
  }
  const lines = levelLines(plan.proof);
  return (
    <div className="mb-4">
      <p>{proofText(plan.proof)}</p>
      {lines.length === 0 ? null : (
        <details>
          <summary className="link content-center">What is proven</summary>
          <div className="mt-2 max-w-2xl">
            <Table
              caption="What is proven of the order, the most important first"
              head={
                <>
                  <Th>made small, in this order</Th>
                  <Th number>this order</Th>
                  <Th number>no order has less than</Th>
                </>
              }
            >
              {lines.map(({ name, value, bound }) => (
                <Tr key={name}>
                  <RowHead>{name}</RowHead>
                  <Td number>{value}</Td>
                  <Td number>{bound}</Td>
                </Tr>
              ))}
            </Table>
          </div>
        </details>
      )}
    </div>
  );
}
