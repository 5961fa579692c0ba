import { sourceText } from '#lib/safety/caution';
import { minutesText } from '#lib/shoot/day-words';
import { isTooLong } from '#lib/shoot/step-words';
import { RowHead, Table, Td, Th, Tr } from '../../../../_ui/table';
import type { DayPage } from './view';

const PART = 'mt-10';

/** Must-rules that this day cannot keep, each in words. The order below them still says what to do. */
export function BrokenRules({ page }: { readonly page: DayPage }) {
  const { broken, clash } = page.plan;
  if (broken.length === 0) return null;
  return (
    <section aria-labelledby="broken" className="mb-8 border-l-[6px] border-hand py-1 pl-4">
      <h2 id="broken" className="text-hand">
        {broken.length === 1 ? 'One rule is broken' : `${broken.length} rules are broken`}
      </h2>
      <p className="mt-1 text-soft">
        The order below comes as near as it can. Change the steps, the times or what is filmed.
      </p>
      <ul className="mt-2 list-disc pl-5">
        {broken.map((rule) => (
          <li key={rule.message}>{rule.message}</li>
        ))}
      </ul>
      {clash.length < 2 ? null : (
        <>
          <p className="mt-2">These rules cannot all be kept. Loosen or drop one of them:</p>
          <ul className="mt-1 list-disc pl-5">
            {clash.map((rule) => (
              <li key={rule}>{rule}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** What must come soon after what, as planned. */
export function SoonAfter({ page }: { readonly page: DayPage }) {
  const { soonAfter } = page.sheet;
  if (soonAfter.length === 0) return null;
  return (
    <section aria-labelledby="soon" className={PART}>
      <details>
        <summary className="content-center">
          <h2 id="soon" className="inline">
            Soon after, hot or fresh
          </h2>{' '}
          <span className="text-soft">{soonAfter.length}</span>
        </summary>
        <ul className="mt-2 list-disc pl-5">
          {soonAfter.map(({ text }) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      </details>
    </section>
  );
}

/** Food that stands out of the cold, each lot against its limit. */
export function Lots({ page }: { readonly page: DayPage }) {
  const { lots } = page.sheet;
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
    <section aria-labelledby="lots" className={PART}>
      <h2 id="lots">Out of the refrigerator</h2>
      <div className="mt-2">
        <Table caption="Food out of the refrigerator" head={head}>
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

/** Cautions, each with its source, and what stands above them all. */
export function Cautions({ page }: { readonly page: DayPage }) {
  const { cautions, localCode } = page.sheet;
  return (
    <section aria-labelledby="cautions" className={PART}>
      <h2 id="cautions">Cautions</h2>
      <ul className="mt-2 list-disc pl-5">
        {cautions.map(({ id, text, source }) => (
          <li key={id}>
            {text} <span className="text-fine text-soft">{sourceText(source)}</span>
          </li>
        ))}
      </ul>
      <p className="mt-2">{localCode}</p>
    </section>
  );
}
