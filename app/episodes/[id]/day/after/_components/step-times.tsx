import { ButtonForm } from '../../../../../_forms/button-form';
import { Disclosure } from '../../../../../_ui/disclosure';
import { RowHead, Table, Td, Th, Tr } from '../../../../../_ui/table';
import { offersOf, offersText, partedByTime, type StepAfter } from '#lib/shoot/after-steps';
import { actualWords, daySummary } from '#lib/shoot/after-words';
import { durationWords } from '#lib/shoot/step-words';
import { minutesSaid } from '#lib/units/read-typed';
import { takeAllMinutes, takeMinutes } from '../actions';
import type { DayAfter } from '../read-after';

const HEAD = (
  <>
    <Th>Step</Th>
    <Th number>Planned</Th>
    <Th number>Took</Th>
    <Th number>Difference</Th>
    <Th>
      <span className="print:hidden">Next time</span>
    </Th>
  </>
);

/** Planned against actual for each step, with the offer to expect next time what it took. */
export function StepTimes({ after }: { readonly after: DayAfter }) {
  const { file, day, steps } = after;
  const offers = offersOf(steps);
  const { timed, untimed } = partedByTime(steps);
  const values = { episodeId: file.episode.id, dayId: day.id };
  return (
    <section aria-labelledby="times">
      <h2 id="times">Planned and actual</h2>
      <p className="mt-1">{daySummary(steps)}</p>
      <p className="mt-1 max-w-[70ch] text-fine text-soft print:hidden">
        A step has its time from the moment at which Start was pressed on the day to the moment of
        Done. Taken as expected, its usual time changes; the shortest and longest stay, unless they
        would leave it out.
      </p>
      {offers.length > 1 && (
        <div className="mt-3">
          <ButtonForm
            action={takeAllMinutes}
            values={{ ...values, offered: offersText(offers) }}
            tone="go"
            size="usual"
          >
            Take all {offers.length} as expected minutes
          </ButtonForm>
        </div>
      )}
      {timed.length > 0 && (
        <div className="mt-4">
          <Table caption="Planned and actual minutes of each step" head={HEAD} stacks close>
            {timed.map((row) => (
              <StepRow key={row.step.id} row={row} values={values} />
            ))}
          </Table>
        </div>
      )}
      {untimed.length > 0 && (
        <div className="mt-3">
          <Disclosure words={untimedWords(untimed.length)}>
            <ul>
              {untimed.map((row) => (
                <li key={row.step.id} className="mb-1">
                  {row.step.title}{' '}
                  <span className="text-fine text-soft">
                    {row.segment.title}, {durationWords(row.step)}: {actualWords(row).remark}
                  </span>
                </li>
              ))}
            </ul>
          </Disclosure>
        </div>
      )}
    </section>
  );
}

const untimedWords = (count: number): string =>
  count === 1 ? 'One step without a time' : `${count} steps without a time`;

interface RowProps {
  readonly row: StepAfter;
  readonly values: Readonly<Record<string, string>>;
}

function StepRow({ row, values }: RowProps) {
  const { step, segment } = row;
  const { took, difference, remark } = actualWords(row);
  return (
    <Tr>
      <RowHead>
        {step.title}
        <span className="block text-fine text-soft">{segment.title}</span>
        {remark !== '' && <span className="block text-fine">{remark}</span>}
      </RowHead>
      <Td number>{durationWords(step)}</Td>
      <Td number>{took}</Td>
      <Td number>{difference}</Td>
      <Td>
        <TakeButton row={row} values={values} />
      </Td>
    </Tr>
  );
}

function TakeButton({ row: { step, actual }, values }: RowProps) {
  if (!('take' in actual)) return null;
  const { take } = actual;
  const minutes = minutesSaid(take.usualS);
  // What is asked about is answered by the same press.
  const words = actual.kind === 'took' ? `Expect ${minutes}` : `Yes, ${minutes}`;
  return (
    <ButtonForm
      action={takeMinutes}
      values={{ ...values, stepId: step.id, offered: offersText([{ step, take }]) }}
      label={`${words} for ${step.title}`}
      tone="plain"
    >
      {words}
    </ButtonForm>
  );
}
