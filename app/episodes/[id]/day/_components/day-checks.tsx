import { minutesText } from '#lib/shoot/day-words';
import { isTooLong, TWO_HOUR_CAUTION } from '#lib/shoot/step-words';
import { cautions, FIGURES_CAUTION } from '#lib/publish/cautions';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { DayPage } from './view';

/** Must-rules that this day cannot keep, each in words. The plan below them still says what to do. */
export function BrokenRules({ page }: { readonly page: DayPage }) {
  const { broken } = page.plan;
  if (broken.length === 0) return null;
  return (
    <section aria-labelledby="broken" className="mb-8 border-l-[6px] border-hand py-1 pl-4">
      <h2 id="broken" className="text-hand">
        {broken.length === 1 ? 'One rule is broken' : `${broken.length} rules are broken`}
      </h2>
      <p className="mt-1 text-soft print:hidden">
        The order below comes as near as it can. Change the steps, the times or what is filmed.
      </p>
      <ul className="mt-2 list-disc pl-5">
        {broken.map((rule) => (
          <li key={rule.message}>{rule.message}</li>
        ))}
      </ul>
    </section>
  );
}

/** Food that stands out of the cold, each lot against its limit. */
export function Lots({ page }: { readonly page: DayPage }) {
  const { lots } = page.plan;
  if (lots.length === 0) return null;
  const head = (
    <>
      <Th>food</Th>
      <Th number>stands out</Th>
      <Th number>at most</Th>
      <Th>so</Th>
    </>
  );
  return (
    <section aria-labelledby="lots" className="mt-10 print:mt-3 print:text-[9pt]">
      <h2 id="lots">Food out of the cold</h2>
      <p className="mt-1 max-w-[70ch] text-soft">{TWO_HOUR_CAUTION}</p>
      <div className="mt-3">
        <Table caption="Food out of the cold" head={head}>
          {lots.map((lot) => (
            <Tr key={lot.perishableId}>
              <RowHead>{lot.name}</RowHead>
              <Td number>{minutesText(lot.minutes)}</Td>
              <Td number>{minutesText(lot.limitMin)}</Td>
              <Td>
                {isTooLong(lot) ? (
                  <b className="text-hand">too long: chill it in between, or throw it away</b>
                ) : (
                  'within its limit'
                )}
              </Td>
            </Tr>
          ))}
        </Table>
      </div>
    </section>
  );
}

/** Inside temperatures and what to follow. */
export function Cautions({ page }: { readonly page: DayPage }) {
  const lines = cautions(page.file).filter((line) => line !== FIGURES_CAUTION);
  if (lines.length === 0) return null;
  return (
    <section aria-labelledby="cautions" className="mt-10 print:mt-3 print:text-[9pt]">
      <h2 id="cautions">Cautions</h2>
      <ul className="mt-2 list-disc pl-5">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}
