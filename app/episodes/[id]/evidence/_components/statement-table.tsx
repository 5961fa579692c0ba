import type { EvidenceStatement } from '#lib/publish/evidence';
import type { Verdict } from '#lib/claims/judged';
import { RowHead, Table, Th, Tr } from '../../../../_ui/table';

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
          stacks
          tight
          close
          head={
            <>
              <Th>where and in which words</Th>
              <Th>what the breakdown says</Th>
            </>
          }
        >
          {statements.map((each, at) => (
            <Tr key={`${String(at)} ${each.words}`}>
              <RowHead>
                <span className="text-soft">{each.place}</span> “{each.words}”
                {each.mended ? ' (reading put right)' : ''}
              </RowHead>
              <td className="col-span-full py-2 pr-3 align-top">
                {each.verdict === 'unknown' ? (
                  each.why
                ) : (
                  <>
                    <b className="font-semibold">
                      {VERDICTS[each.verdict]}
                      {each.difference === null ? '' : `: ${each.difference}`}
                    </b>
                    {' · '}
                    {each.why}
                  </>
                )}
              </td>
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
