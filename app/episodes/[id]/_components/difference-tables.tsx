import { RowHead, Table, Td, Th, Tr } from '../../../_ui/table';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import type { LockDifference, NumberChange, NumberThen } from '#lib/lock/lock-difference';

interface Props {
  readonly difference: Omit<LockDifference, 'holds'>;
  /** The moment of the lock as read. */
  readonly since: string;
}

/** What changed under a lock: first the causes, then every number, the headline ones before the others. */
export function DifferenceTables({ difference, since }: Props) {
  const { inputs, numbers, otherEngine } = difference;
  const isHeadline = ({ nutrient }: NumberChange) =>
    HEADLINE_NUTRIENTS.some((each) => each === nutrient);
  const headline = numbers.filter(isHeadline);
  const others = numbers.filter((each) => !isHeadline(each));
  return (
    <div className="mt-3 grid grid-cols-1 gap-4">
      {otherEngine && (
        <p>The calculation itself has changed with a newer version of the program.</p>
      )}
      {inputs.length > 0 && (
        <Table
          caption={`What changed since ${since}`}
          showCaption
          close
          head={
            <>
              <Th>what</Th>
              <Th>then</Th>
              <Th>now</Th>
            </>
          }
        >
          {inputs.map(({ where, what, from, to }) => (
            <Tr key={`${where} ${what} ${from} ${to}`}>
              <RowHead>
                {where === '' ? '' : `${where}: `}
                {what}
              </RowHead>
              <Td>{from === '' ? 'nothing' : from}</Td>
              <Td>{to === '' ? 'nothing' : to}</Td>
            </Tr>
          ))}
        </Table>
      )}
      {numbers.length === 0 && <p>No number is written otherwise, and no range has moved.</p>}
      {headline.length > 0 && <Changes caption="Numbers that changed" changes={headline} />}
      {others.length > 0 && (
        <details>
          <summary className="link min-h-11 content-center">
            {others.length} more, of other nutrients
          </summary>
          <Changes caption="Numbers of other nutrients that changed" changes={others} />
        </details>
      )}
    </div>
  );
}

function Changes({
  caption,
  changes,
}: {
  readonly caption: string;
  readonly changes: readonly NumberChange[];
}) {
  return (
    <Table
      caption={caption}
      showCaption
      close
      head={
        <>
          <Th>of</Th>
          <Th>then</Th>
          <Th>now</Th>
        </>
      }
    >
      {changes.map(({ scope, dish, part, label, unit, nutrient, from, to, rangeOnly, sumOnly }) => (
        <Tr key={`${JSON.stringify(scope)} ${nutrient}`}>
          <RowHead>
            {dish === null ? '' : `${dish}, `}
            {part}: {label}
            {rangeOnly ? ', its range' : ''}
            {sumOnly ? ', only so that the numbers add up' : ''}
          </RowHead>
          <Td>
            <Then of={from} unit={unit} />
          </Td>
          <Td>
            <Then of={to} unit={unit} />
          </Td>
        </Tr>
      ))}
    </Table>
  );
}

function Then({ of, unit }: { readonly of: NumberThen | null; readonly unit: string }) {
  if (of === null) return <>none</>;
  return (
    <>
      {of.text} {of.text === 'open' ? '' : unit}
      <span className="block text-fine text-soft">{of.range}</span>
    </>
  );
}
