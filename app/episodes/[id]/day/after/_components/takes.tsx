import { ButtonLink } from '../../../../../_ui/button';
import { RowHead, Table, Td, Th, Tr } from '../../../../../_ui/table';
import { takeWord } from '#lib/cut/take-marks';
import { episodeRate, FRAME_RATE_IDS, frameRate, printTimecode } from '#lib/cut/timecode';
import { dayClock } from '#lib/shoot/local-time';
import { keepCameraClock } from '../actions';
import { withDay } from '../../asked-day';
import type { DayAfter } from '../read-after';
import { ClockForm } from './clock-form';

const HEAD = (
  <>
    <Th>Take</Th>
    <Th>Good or again</Th>
    <Th number>Ended at</Th>
    <Th number>Timecode</Th>
  </>
);

const RATES = FRAME_RATE_IDS.map((value) => ({ value, words: frameRate(value).words }));

interface Props {
  readonly after: DayAfter;
  /** The filming day that the address names; null for the one that is next. */
  readonly dayId: string | null;
}

/** The takes of the day: what they are for the edit, and the picture of the clock that gives them timecodes. */
export function Takes({ after, dayId }: Props) {
  const { file, day, takes, seen, marks } = after;
  const here = `/episodes/${file.episode.id}/day/after`;
  const rate = seen?.rate ?? episodeRate(file.episode) ?? frameRate('25');
  return (
    <section aria-labelledby="takes" className="mt-12">
      <h2 id="takes">Takes</h2>
      {takes.length === 0 ? (
        <p className="mt-1 text-soft">No take was entered on this day.</p>
      ) : (
        <>
          <p className="mt-2 flex flex-wrap items-center gap-3 print:hidden">
            <ButtonLink href={withDay(`${here}/takes.csv`, dayId)} download>
              Table
            </ButtonLink>
            {marks && (
              <>
                <ButtonLink href={withDay(`${here}/takes.edl`, dayId)} download>
                  Edit decision list
                </ButtonLink>
                <ButtonLink href={withDay(`${here}/takes.otio`, dayId)} download>
                  Timeline with markers
                </ButtonLink>
              </>
            )}
          </p>
          <div className="mt-4">
            <Table caption="Takes in the order of the day" head={HEAD} stacks close>
              {takes.map((take, index) => (
                <Tr key={`${take.slate} ${take.take} ${take.at}`}>
                  <RowHead>
                    <b className="mr-2 font-semibold">
                      {take.slate} take {take.take}
                    </b>
                    {take.shot}
                    {take.framing !== '' && `, ${take.framing}`}
                    <span className="block text-fine text-soft">{take.segment}</span>
                    {take.note !== '' && <span className="block text-fine">{take.note}</span>}
                  </RowHead>
                  <Td>{takeWord(take)}</Td>
                  <Td number>{take.clock}</Td>
                  <Td number>{marks?.[index]?.timecode ?? '–'}</Td>
                </Tr>
              ))}
            </Table>
          </div>
        </>
      )}
      <div className="mt-6 max-w-3xl print:hidden">
        <h3>The clock in the picture</h3>
        <p className="mt-1 mb-3 text-soft">
          Film the phone’s clock once with its seconds, and say here what the picture shows. From
          then on every take has the timecode at which it ended. It holds for a camera whose
          timecode runs on all day, also while it does not record.
        </p>
        <ClockForm
          action={keepCameraClock}
          hidden={{ episodeId: file.episode.id, dayId: day.id }}
          rates={RATES}
          initial={{
            clock: seen ? dayClock(new Date(seen.clockAt), day.date, file.kitchen.zone) : '',
            timecode: seen ? printTimecode(seen.frame, seen.rate) : '',
            rate: rate.id,
          }}
        />
      </div>
    </section>
  );
}
