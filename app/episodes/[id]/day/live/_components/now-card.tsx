import { useEffect, useRef, type ReactNode } from 'react';
import { Button } from '../../../../../_ui/button';
import { minutesText } from '#lib/shoot/day-words';
import type { LiveRow } from '../live-row';
import { LongerOrSkip } from './longer-or-skip';

interface Props {
  readonly now: LiveRow | null;
  readonly next: LiveRow | null;
  /** Whether there is nothing to do at all. */
  readonly empty: boolean;
  readonly behindMin: number | null;
  /** Since when it is under way, by the clock; null where nobody said so. */
  readonly since: string | null;
  /** Until when it was said to take. */
  readonly until: string | null;
  readonly ready: boolean;
  readonly onMark: (kind: NowMark, row: LiveRow) => void;
  readonly onLonger: (row: LiveRow, minutes: number) => void;
  /** What is got and read while it goes on. */
  readonly children: ReactNode;
}

export type NowMark = 'started' | 'done' | 'skipped';

/** The one thing now, to be read at arm's length, and the one next. */
export function NowCard(props: Props) {
  const { now, next, empty, behindMin, since, until, ready, onMark, onLonger, children } = props;
  const end = useRef<HTMLParagraphElement>(null);
  const pressed = useRef(false);
  const over = now === null;
  useEffect(() => {
    // The button that was pressed is gone: the keyboard goes on from here.
    if (over && pressed.current) end.current?.focus();
  }, [over]);
  const press = (kind: NowMark, row: LiveRow) => (event: React.MouseEvent) => {
    // The second half of a double press would mark the row that has just moved under the finger.
    if (event.detail > 1) return;
    pressed.current = true;
    onMark(kind, row);
  };
  const meanwhile = now !== null && !now.entry.hands && next !== null;
  return (
    <section aria-labelledby="now" className="border-[1.5px] border-ink bg-raised">
      <div className="p-4">
        <h2 id="now" className="lettering text-lead text-soft uppercase">
          Now
        </h2>
        <div aria-live="polite" aria-atomic="true">
          {now === null ? (
            <p ref={end} tabIndex={-1} className="my-3 font-slate text-figure font-semibold">
              {empty ? 'Nothing to do: the day has no steps yet.' : 'All done.'}
            </p>
          ) : (
            <p className={`my-2 pl-3 font-slate text-figure font-semibold ${now.edge}`}>
              {now.title}
            </p>
          )}
        </div>
        {now && (
          <>
            <p className="text-step">
              {now.from} to {now.to}
            </p>
            {since !== null && (
              <p className="text-lead font-semibold">
                Under way since {since}
                {until !== null && `, until ${until}`}
              </p>
            )}
            {behindMin !== null && (
              <p className="text-lead font-semibold text-hand">
                {minutesText(behindMin)} past its planned end
              </p>
            )}
            <p className="text-lead">{[now.segmentTitle, now.place].filter(Boolean).join(' · ')}</p>
            {now.facts.map((fact) => (
              <p key={fact} className="text-lead">
                {fact}
              </p>
            ))}
            {now.remarks.map((remark) => (
              <p key={remark} className="text-lead font-semibold text-hand">
                {remark}
              </p>
            ))}
            <div className="mt-4 grid gap-3 [&>button]:min-h-20">
              {since === null && !now.entry.hands && (
                <Button
                  type="button"
                  tone="go"
                  size="day"
                  disabled={!ready}
                  onClick={press('started', now)}
                >
                  Start<span className="unseen"> {now.title}</span>
                </Button>
              )}
              <Button
                type="button"
                tone={since === null && !now.entry.hands ? 'plain' : 'go'}
                size="day"
                disabled={!ready}
                onClick={press('done', now)}
              >
                Done<span className="unseen"> {now.title}</span>
              </Button>
              {since === null && now.entry.hands && (
                <Button type="button" size="day" disabled={!ready} onClick={press('started', now)}>
                  Start<span className="unseen"> {now.title}</span>
                </Button>
              )}
            </div>
            {children}
            <LongerOrSkip
              key={now.key}
              row={now}
              ready={ready}
              onLonger={onLonger}
              onSkip={() => onMark('skipped', now)}
            />
          </>
        )}
      </div>
      {next && (
        <section aria-labelledby="next" className="border-t-[1.5px] border-ink p-4">
          <h2 id="next" className="lettering text-lead text-soft uppercase">
            {meanwhile ? 'Next, while that runs by itself' : 'Next'}
          </h2>
          <p className={`my-1 pl-3 font-slate text-step font-semibold ${next.edge}`}>
            {next.title}
          </p>
          <p className="text-lead">
            {next.from} to {next.to} · {[next.segmentTitle, next.place].filter(Boolean).join(' · ')}
          </p>
          {meanwhile && (
            <div className="mt-3">
              <Button type="button" size="day" disabled={!ready} onClick={press('done', next)}>
                Done<span className="unseen"> {next.title}</span>
              </Button>
            </div>
          )}
        </section>
      )}
    </section>
  );
}
