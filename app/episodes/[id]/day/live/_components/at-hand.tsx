import type { Episode } from '#lib/episode/schema';
import type { Entry } from '#lib/shoot/day-log';
import type { DayFold } from '#lib/shoot/fold-day';
import type { LiveRow, LiveShot } from '../live-row';
import { InsideForm } from './inside-form';
import { MissingShots } from './missing-shots';
import { ShotsAtHand } from './shots-at-hand';

interface Props {
  readonly row: LiveRow | null;
  readonly region: Episode['region'];
  readonly fold: DayFold;
  readonly ready: boolean;
  readonly clock: (at: string) => string;
  /** Shots that are asked about before the row begins; null while nothing is asked. */
  readonly missing: readonly LiveShot[] | null;
  readonly onTakeNow: () => void;
  readonly onWithout: (shots: readonly LiveShot[]) => void;
  readonly onEnter: (entry: Entry) => Promise<void>;
}

/** What is got and read while a step goes on: its shots, an inside temperature, what a plate still owes. */
export function AtHand({ row, fold, missing, ...rest }: Props) {
  if (row === null) return null;
  const { region, ready, clock, onTakeNow, onWithout, onEnter } = rest;
  const { stepId } = row.entry;
  const ends = row.role === 'eat' || row.role === 'taste';
  const shots = row.shots.filter(
    (shot) => shot.stepId === stepId || (ends && !fold.without.has(shot.id)),
  );
  if (missing !== null && missing.length > 0) {
    return (
      <MissingShots
        title={row.title}
        shots={missing}
        onTakeNow={onTakeNow}
        onWithout={() => onWithout(missing)}
      />
    );
  }
  return (
    <>
      {row.inside && stepId !== null && (
        <InsideForm
          key={row.key}
          inside={row.inside}
          region={region}
          readings={fold.readings.filter(({ rowKey }) => rowKey === row.key)}
          ready={ready}
          clock={clock}
          onRead={(milliC) =>
            onEnter({ kind: 'temperature', refs: { stepId }, payload: { milliC } })
          }
        />
      )}
      <ShotsAtHand
        shots={shots}
        fold={fold}
        ready={ready}
        onTake={({ id }, good) =>
          void onEnter({ kind: 'take', refs: row.ref, payload: { shotId: id, good } })
        }
      />
    </>
  );
}
