import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import { changeCount, type VersionRow } from '#lib/foods/compare-versions';
import type { FoodVersion } from '#lib/foods/food';
import { sourceWords } from '#lib/figures/breakdown-words';

interface Props {
  readonly name: string;
  /** The last first. */
  readonly versions: readonly FoodVersion[];
  readonly rows: readonly VersionRow[];
}

/** Readings of a food beside each other; what differs from the reading before stands bold and says so. */
export function ReadingsTable({ name, versions, rows }: Props) {
  const head = (
    <>
      <Th>nutrient</Th>
      {versions.map((version, at) => (
        <Th key={version.id} number>
          reading {version.seq}
          {at === 0 ? ', in use' : ''}
          <span className="block font-sans text-fine tracking-normal">{sourceWords(version)}</span>
          <span className="block font-sans text-fine tracking-normal">
            {changesWords(rows, at)}
          </span>
        </Th>
      ))}
    </>
  );
  return (
    <Table caption={`Readings of ${name}`} head={head} tight>
      {rows.map(({ label, unit, cells }) => (
        <Tr key={label}>
          <RowHead>
            {label}
            {unit !== '' && <span className="text-fine text-soft"> {unit}</span>}
          </RowHead>
          {cells.map(({ text, against }, at) => (
            <Td key={versions[at]?.id} number>
              {against === 'changed' ? <b className="font-semibold">{text}</b> : text}
              {against === 'changed' && <span className="block text-fine text-hand">changed</span>}
              {against === 'apart' && (
                <span className="block text-fine text-soft">for another amount</span>
              )}
            </Td>
          ))}
        </Tr>
      ))}
    </Table>
  );
}

function changesWords(rows: readonly VersionRow[], at: number): string {
  if (rows.every(({ cells }) => cells[at]?.against === null)) return 'the first shown';
  const count = changeCount(rows, at);
  if (count === 0) return 'nothing changed';
  return count === 1 ? 'one thing changed' : `${count} things changed`;
}
