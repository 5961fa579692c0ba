import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { EditPage } from './view';

/** A longer table leaves out what needs nothing. */
const MOST_ROWS = 400;

/** The result on paper, and where no script runs: each statement with its verdict and what to say. */
export function ResultTable({ page }: { readonly page: EditPage }) {
  const { rows, counts } = page;
  if (rows.length === 0) return null;
  const all = rows.length <= MOST_ROWS;
  const told = all
    ? rows
    : rows.filter(({ standing }) => standing !== 'agrees' && standing !== 'aside');
  return (
    <section className="mt-8 hidden noscript:block print:block">
      <Table
        caption="What was said, and what the breakdown says"
        showCaption
        close
        head={
          <>
            <Th>Where</Th>
            <Th>Said</Th>
            <Th>Verdict</Th>
            <Th>The breakdown, and what to say</Th>
          </>
        }
      >
        {told.map((row) => (
          <Tr key={row.id}>
            <RowHead>{row.place}</RowHead>
            <Td>“{row.words}”</Td>
            <Td>{row.standing === 'agrees' ? 'agrees' : row.verdict}</Td>
            <Td>
              {row.why}
              {row.sayInstead !== null && <b className="font-semibold"> Say: {row.sayInstead}</b>}
            </Td>
          </Tr>
        ))}
      </Table>
      {!all && (
        <p className="mt-2">
          The {counts.agrees} that agree and the {counts.aside} put aside are not listed.
        </p>
      )}
    </section>
  );
}
