import Link from 'next/link';
import type { CorrectedNumber } from '#lib/publish/correction/correction-of';
import { byPart } from '#lib/publish/correction/correction-words';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import { breakdownHref } from '../../breakdown/href';

interface Props {
  readonly caption: string;
  readonly numbers: readonly CorrectedNumber[];
  /** The episode whose numbers of now they are, so that each leads to its working; null where they are of before. */
  readonly workingOf: string | null;
}

/** Each number as it went out and as it is, with both ranges, amount by amount. */
export function NumberChanges({ caption, numbers, workingOf }: Props) {
  return (
    <Table
      caption={caption}
      close
      head={
        <>
          <Th>of</Th>
          <Th>went out</Th>
          <Th>is now</Th>
        </>
      }
    >
      {byPart(numbers).flatMap(([part, all]) =>
        all.map((number) => (
          <Tr key={`${part} ${number.nutrient} ${number.from.text}`}>
            <RowHead>
              {part}: {number.label}
              {number.spoken && (
                <span className="block text-fine text-soft">said in the video</span>
              )}
            </RowHead>
            <Td>
              <Amount text={number.from.text} unit={number.unit} />
              <Range words={number.from.range} />
            </Td>
            <Td>
              {number.to === null ? (
                'no longer counted'
              ) : (
                <>
                  <b className="font-semibold">
                    {workingOf === null ? (
                      <Amount text={number.to.text} unit={number.unit} />
                    ) : (
                      <Link
                        className="link -my-1 inline-flex min-h-8 items-center"
                        href={breakdownHref(workingOf, number.scope, number.nutrient)}
                      >
                        <Amount text={number.to.text} unit={number.unit} />
                        <span className="unseen">
                          : working of {number.label}, {part}
                        </span>
                      </Link>
                    )}
                  </b>
                  <Range words={number.to.range} />
                </>
              )}
            </Td>
          </Tr>
        )),
      )}
    </Table>
  );
}

/** The row says of what it is. */
function Amount({ text, unit }: { readonly text: string; readonly unit: string }) {
  return <>{text === 'open' ? text : `${text} ${unit}`}</>;
}

/** "likely 197–212, digits allow 194–216": a line ends between words and never within a range. */
function Range({ words }: { readonly words: string }) {
  return (
    <span className="block text-fine text-soft">
      {words.split(/([\d.]+–[\d.]+)/).map((part, at) => (
        <span
          key={`${String(at)} ${part}`}
          className={part.includes('–') ? 'whitespace-nowrap' : ''}
        >
          {part}
        </span>
      ))}
    </span>
  );
}
