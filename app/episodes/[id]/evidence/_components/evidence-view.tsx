import { STANDING_WORDS } from '#lib/lock/lock-standing';
import { localMoment } from '#lib/units/local-date';
import type { Evidence } from '#lib/publish/evidence';
import { evidenceTable } from '#lib/publish/evidence-table';
import { PrintButton } from '../../../../_ui/print-button';
import { SlateHead } from '../../../../_ui/slate-head';
import { DifferenceTables } from '../../_components/difference-tables';
import { LockLine } from '../../publish/_components/lock-line';
import { DishTable, PartsTable } from './dish-table';
import { StatementTable } from './statement-table';

interface Props {
  readonly episodeId: string;
  readonly evidence: Evidence;
  readonly zone: string;
}

/** Small and close in print: a row for each ingredient and each statement. */
const CLOSE_IN_PRINT =
  'print:gap-2 print:text-[7.5pt] print:leading-tight print:[&_:is(h2,h3)]:text-[9pt] print:[&_:is(td,th)]:py-px print:[&_table]:text-[7.5pt]';

/** All that the numbers of an episode can be defended by, on one page to print. */
export function EvidenceView({ episodeId, evidence, zone }: Props) {
  const { lock, difference, episode } = evidence;
  const moment = (at: string) => localMoment(new Date(at), zone);
  const { dishes, day } = evidenceTable(evidence);
  const standing = lock === null ? 'draft' : lock.holds ? 'locked' : 'broken';
  // What is shown is worked out now; what changed stands in the tables below.
  const told = { standing, ofLock: false, at: lock && moment(lock.at), reason: null } as const;
  return (
    <>
      <SlateHead
        kind="Evidence"
        title={episode.title}
        shut={lock?.holds === true}
        cells={[
          { name: 'Numbers', value: STANDING_WORDS[standing] },
          { name: 'Made', value: moment(evidence.at) },
        ]}
      />
      <div className={`grid grid-cols-1 gap-8 ${CLOSE_IN_PRINT}`}>
        <section aria-labelledby="lock">
          <h2 id="lock">The lock</h2>
          <LockLine episodeId={episodeId} told={told} />
          {lock && (
            <p className="text-fine break-all text-soft print:text-[7pt]">
              Lock {lock.seq ?? 1}: SHA-256 of the snapshot {lock.sha256}
              {lock.inputsSha256 === null ? '' : `, of the inputs ${lock.inputsSha256}`};
              calculation {lock.engineVersion}
            </p>
          )}
          {lock && difference && (
            <DifferenceTables difference={difference} since={moment(lock.at)} />
          )}
          <p className="mt-3 flex flex-wrap items-center gap-x-6 gap-y-2 print:hidden">
            <PrintButton>Print the evidence</PrintButton>
            <a className="link" href={`/episodes/${episodeId}/evidence/evidence.json`}>
              As data, evidence.json
            </a>
          </p>
        </section>
        <section aria-labelledby="working">
          <h2 id="working">The working</h2>
          <div className="mt-2 grid grid-cols-1 gap-5 print:gap-2">
            {dishes.map((dish) => (
              <DishTable key={dish.title} dish={dish} />
            ))}
            <PartsTable
              caption="The day"
              parts={day[0] ? [{ part: day[0].title, numbers: day }] : []}
            />
          </div>
        </section>
        <StatementTable statements={evidence.statements} putAside={evidence.putAside} />
        <footer className="max-w-[80ch] text-fine text-soft print:max-w-none print:text-[7pt]">
          {evidence.remarks.map((remark) => (
            <p key={remark}>{remark}</p>
          ))}
        </footer>
      </div>
    </>
  );
}
