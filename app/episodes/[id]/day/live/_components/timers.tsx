import { Button } from '../../../../../_ui/button';
import { leftText, type DayTimer } from '#lib/shoot/day-timers';
import type { LiveRow } from '../live-row';
import { useAlarm } from './use-alarm';
import { useSecond } from '../../../../../_sync/use-device';
import { useStopped } from './use-stopped';

type Timer = DayTimer<LiveRow>;

interface Props {
  readonly dayId: string;
  readonly timers: readonly Timer[];
  readonly clock: (at: string) => string;
  readonly onDone: (row: LiveRow) => void;
}

const nameOf = ({ key, endsAt }: Timer): string => `${key} ${endsAt}`;

/** What runs by itself, with what is left; what is out stands on top and rings until it is stopped. */
export function Timers({ dayId, timers, clock, onDone }: Props) {
  const now = useSecond(timers.length > 0);
  const [stopped, stop] = useStopped(dayId);
  const out = now === null ? [] : timers.filter(({ endsAt }) => endsAt <= now);
  const ringing = out.filter((timer) => !stopped.has(nameOf(timer)));
  const alarm = useAlarm(ringing.length > 0);
  if (timers.length === 0 || now === null) return null;
  return (
    <section aria-labelledby="timers" className="mb-6 border-[1.5px] border-self bg-raised p-4">
      <h2 id="timers" className="lettering text-lead text-soft uppercase">
        Timers
      </h2>
      <div role="alert">
        {ringing.map((timer) => (
          <p key={nameOf(timer)} className="mt-2 font-slate text-figure font-semibold text-hand">
            Time is up: {timer.row.title}
          </p>
        ))}
      </div>
      {ringing.map((timer) => (
        <div key={nameOf(timer)} className="mt-2 [&>button]:min-h-20">
          <Button type="button" tone="go" size="day" onClick={() => stop(nameOf(timer))}>
            Stop<span className="unseen"> the alarm of {timer.row.title}</span>
          </Button>
        </div>
      ))}
      <ul>
        {timers.map((timer) => (
          <li
            key={timer.key}
            className="grid grid-cols-[1fr_8rem] items-center gap-x-3 border-b border-line py-3"
          >
            <div className={`pl-3 ${timer.row.edge}`}>
              <b className="text-lead font-semibold">{timer.row.title}</b>
              <p className="text-step tabular-nums">
                {leftText(timer.endsAt - now)}
                {timer.endsAt > now && (
                  <span className="text-lead text-soft">
                    {' '}
                    until {clock(new Date(timer.endsAt).toISOString())}
                  </span>
                )}
              </p>
            </div>
            <Button type="button" size="day" onClick={() => onDone(timer.row)}>
              Done<span className="unseen"> {timer.row.title}</span>
            </Button>
          </li>
        ))}
      </ul>
      <div className="mt-3">
        <Button type="button" size="day" onClick={alarm.on ? alarm.turnOff : alarm.turnOn}>
          {alarm.on ? 'Sound is on: turn it off' : 'Ring when time is up'}
        </Button>
      </div>
    </section>
  );
}
