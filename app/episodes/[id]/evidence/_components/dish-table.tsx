import type { DishWorking, NumbersOfPart } from '#lib/publish/evidence-table';
import type { EvidenceNumber } from '#lib/publish/evidence-numbers';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';

/** A dish's ingredients against what each adds, its sum, and its parts. */
export function DishTable({ dish }: { readonly dish: DishWorking }) {
  const { title, numbers, rows, parts } = dish;
  return (
    <div className="grid grid-cols-1 gap-2 print:gap-1">
      <h3>{title}</h3>
      <Table
        caption={title}
        stacks
        tight
        close
        head={
          <>
            <Th>ingredient</Th>
            <Th number>g</Th>
            <Th side>food and source</Th>
            {numbers.map(({ nutrient, label, unit }) => (
              <Th key={nutrient} number>
                {label}, {unit}
              </Th>
            ))}
          </>
        }
      >
        {rows.map(({ ingredient, grams, foods, adds }, at) => (
          <Tr key={`${String(at)} ${ingredient}`}>
            <RowHead>
              {ingredient}
              <span className="block text-fine text-soft md:hidden print:hidden">{foods}</span>
            </RowHead>
            <Td number>
              {grams}
              <Unit>{grams === 'open' ? '' : 'g'}</Unit>
            </Td>
            <Td side>{foods}</Td>
            {numbers.map(({ nutrient, unit, label }, place) => (
              <Td key={nutrient} number>
                {adds[place]}
                <Unit>{unit === 'kcal' ? unit : `${unit} ${label}`}</Unit>
              </Td>
            ))}
          </Tr>
        ))}
        <Tr>
          <RowHead>
            <b className="font-semibold">as published</b>
          </RowHead>
          <Td side />
          <Td side />
          {numbers.map(({ nutrient, text, unit, label }) => (
            <Td key={nutrient} number>
              <b className="font-semibold">{text}</b>
              <Unit>{unit === 'kcal' ? unit : `${unit} ${label}`}</Unit>
            </Td>
          ))}
        </Tr>
      </Table>
      <PartsTable
        caption={`${title}: its numbers and their ranges`}
        parts={[{ part: 'the whole dish', numbers }, ...parts]}
      />
    </div>
  );
}

/** A unit where a row stands alone, without the heads of its columns. */
function Unit({ children }: { readonly children: string }) {
  return <span className="md:hidden print:hidden"> {children}</span>;
}

/** Amounts, each with its numbers and their ranges in a line. */
export function PartsTable({
  caption,
  parts,
}: {
  readonly caption: string;
  readonly parts: readonly NumbersOfPart[];
}) {
  if (parts.length === 0) return null;
  return (
    <dl aria-label={caption} className="text-fine print:text-[8pt]">
      {parts.map(({ part, numbers }) => (
        <div key={part} className="border-b border-line py-1 print:py-0">
          <dt className="inline font-semibold">{part}: </dt>
          <dd className="inline">{numbers.map(words).join(' · ')}</dd>
        </div>
      ))}
    </dl>
  );
}

function words({ text, unit, label, range, status }: EvidenceNumber): string {
  const what = unit === 'kcal' ? '' : ` ${label}`;
  return status === 'open' ? `${label} open: ${range}` : `${text} ${unit}${what} (${range})`;
}
