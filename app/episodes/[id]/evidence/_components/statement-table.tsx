import type { EvidenceStatement } from '#lib/publish/evidence';
import type { Verdict } from '#lib/claims/judged';
import { printRuntime } from '#lib/units/print';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';

const VERDICTS: Readonly<Record<Verdict, string>> = {
  agrees: 'agrees with the breakdown',
  edge: 'at the edge',
  off: 'off',
  unknown: 'can’t say',
};

interface Props {
  readonly statements: readonly EvidenceStatement[];
  readonly putAside: readonly string[];
}

/** Every statement of captions, description, titles and cards, with what the breakdown says of it. */
export function StatementTable({ statements, putAside }: Props) {
  return (
    <section aria-labelledby="statements">
      <h2 id="statements">What was said, shown and written</h2>
      {statements.length === 0 ? (
        <p className="mt-1 text-soft">No captions, description, title or card says a number yet.</p>
      ) : (
        <Table
          caption="Statements and what the breakdown says of them"
          tight
          close
          head={
            <>
              <Th>where</Th>
              <Th>words</Th>
              <Th>verdict</Th>
              <Th>held against</Th>
            </>
          }
        >
          {statements.map((each, at) => (
            <Tr key={`${String(at)} ${each.words}`}>
              <RowHead>{placeOf(each)}</RowHead>
              <Td>
                “{each.words}”{each.mended ? ' (reading put right)' : ''}
              </Td>
              <Td>
                {VERDICTS[each.verdict]}
                {each.difference === null ? '' : `: ${each.difference}`}
              </Td>
              <Td>{each.why}</Td>
            </Tr>
          ))}
        </Table>
      )}
      {putAside.length > 0 && (
        <p className="mt-2 text-fine">
          Put aside, as no statement about food: {putAside.map((words) => `“${words}”`).join(', ')}.
        </p>
      )}
    </section>
  );
}

function placeOf({ startMs, kind, line, text }: EvidenceStatement): string {
  if (startMs !== null) return printRuntime(startMs / 1000);
  return kind === 'talkingPoint' ? `talking point, ${text}` : `${kind}, line ${String(line)}`;
}
