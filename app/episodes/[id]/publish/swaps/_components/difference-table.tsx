import { Disclosure } from '../../../../../_ui/disclosure';
import { RowHead, Table, Td, Th, Tr } from '../../../../../_ui/table';
import type { SwapFigureRow, SwapView } from '#lib/publish/swap-view';

/** What a swap does to every figure, with its range; those nobody talks about are folded away. */
export function SwapDifferences({ view }: { readonly view: SwapView }) {
  const others = view.rows.filter(({ headline }) => !headline);
  return (
    <>
      <Rows caption="What changes" view={view} rows={view.rows.filter((row) => row.headline)} />
      {others.length > 0 && (
        <Disclosure words={`${others.length} more`}>
          <Rows caption="What else changes" view={view} rows={others} />
        </Disclosure>
      )}
    </>
  );
}

function Rows({
  caption,
  view,
  rows,
}: {
  readonly caption: string;
  readonly view: SwapView;
  readonly rows: readonly SwapFigureRow[];
}) {
  return (
    <Table
      caption={caption}
      close
      head={
        <>
          <Th>more or less</Th>
          {view.columns.map(({ key, words }) => (
            <Th key={key} number>
              {words}
            </Th>
          ))}
        </>
      }
    >
      {rows.map(({ nutrient, label, unit, cells }) => (
        <Tr key={nutrient} open={cells.every(({ text }) => text === 'open')}>
          <RowHead>{label}</RowHead>
          {cells.map((cell, at) => (
            <Td key={view.columns[at]?.key} number>
              {cell.text} {cell.text === 'open' ? '' : unit}
              <span className="block text-fine whitespace-normal text-soft">{cell.range}</span>
            </Td>
          ))}
        </Tr>
      ))}
    </Table>
  );
}
