import { useEffect, useRef, useState } from 'react';
import { Button } from '../../../../../_ui/button';
import type { DayEvent } from '#lib/shoot/day-log';
import { clockText, minutesText } from '#lib/shoot/day-words';
import type { ReplanNews } from '#lib/shoot/replan-words';
import { askReplan } from '../_log/ask-replan';

interface Props {
  readonly address: string;
  readonly dayId: string;
  /** Minutes by which the day is behind what was promised. */
  readonly slip: number;
  /** What waits on this device, which the program does not know yet. */
  readonly waiting: readonly DayEvent[];
  readonly ready: boolean;
  /** The order that was taken last, and when; null while the day goes by the plan. */
  readonly order: { readonly id: string; readonly at: string } | null;
  readonly onBack: (replannedId: string) => void;
  readonly onTake: (news: ReplanNews) => void;
}

type Asked =
  | { readonly kind: 'idle' | 'asking' }
  | { readonly kind: 'news'; readonly news: ReplanNews }
  | { readonly kind: 'fault'; readonly words: string };

/** By how much the day has slipped; what another order from now on would move, to be taken or left. */
export function Slip(props: Props) {
  const { address, dayId, slip, waiting, ready, order, onBack, onTake } = props;
  const [asked, setAsked] = useState<Asked>({ kind: 'idle' });
  const told = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (asked.kind === 'news') told.current?.focus();
  }, [asked.kind]);
  const ask = async () => {
    setAsked({ kind: 'asking' });
    const answer = await askReplan(address, dayId, waiting);
    setAsked(
      answer.ok
        ? { kind: 'news', news: answer.value }
        : { kind: 'fault', words: answer.problems[0]?.message ?? '' },
    );
  };
  const late = slip > 0;
  if (asked.kind === 'news') {
    const { news } = asked;
    return (
      <section aria-labelledby="slip" className="mb-6 border-[1.5px] border-ink bg-raised p-4">
        <h2 id="slip" ref={told} tabIndex={-1} className="text-head">
          {news.changes.length === 0
            ? 'Nothing has to move'
            : `What moves, from ${clockText(news.nowMin)}`}
        </h2>
        <News news={news} />
        <div className="sticky bottom-0 mt-4 grid gap-3 bg-raised py-2">
          {news.changes.length > 0 && (
            <Button
              type="button"
              tone="go"
              size="day"
              onClick={() => {
                onTake(news);
                setAsked({ kind: 'idle' });
              }}
            >
              Take it
            </Button>
          )}
          <Button type="button" size="day" onClick={() => setAsked({ kind: 'idle' })}>
            Leave it
          </Button>
        </div>
      </section>
    );
  }
  return (
    <section
      aria-label="Re-plan"
      className={late ? 'mb-6 border-[1.5px] border-hand bg-raised p-4' : 'mb-6'}
    >
      {late && (
        <p className="mb-3 text-lead font-semibold text-hand">
          The day has slipped by {minutesText(slip)}
        </p>
      )}
      <Button
        type="button"
        size="day"
        disabled={!ready || asked.kind === 'asking'}
        onClick={() => void ask()}
      >
        {late ? 'See what moves' : 'Re-plan from now'}
      </Button>
      {order !== null && (
        <div className="mt-3">
          <Button type="button" size="day" disabled={!ready} onClick={() => onBack(order.id)}>
            Back to the order before {order.at}
          </Button>
        </div>
      )}
      <p role="status" className="mt-2 font-semibold">
        {asked.kind === 'asking' && 'Looking for the order that moves least.'}
        {asked.kind === 'fault' && asked.words}
      </p>
    </section>
  );
}

function News({ news }: { readonly news: ReplanNews }) {
  return (
    <>
      {news.actions.map(({ text, source }) => (
        <p key={text} className="mt-2 border-l-[6px] border-hand pl-3 text-lead">
          <b className="font-semibold text-hand">{text}</b>
          {source !== null && <span className="block text-fine text-soft">{source}</span>}
        </p>
      ))}
      {news.notPlaced.map(({ text, why }) => (
        <p key={text} className="mt-2 border-l-[6px] border-line pl-3 text-lead">
          <b className="font-semibold">No place for “{text}”.</b> {why}
        </p>
      ))}
      {news.broken.length > 0 && (
        <>
          <h3 className="mt-3 font-semibold">Can’t be kept any more</h3>
          <ul>
            {news.broken.map((rule) => (
              <li key={rule} className="text-lead text-hand">
                {rule}
              </li>
            ))}
          </ul>
        </>
      )}
      <ul className="mt-2">
        {news.changes.map((change) => (
          <li key={change} className="border-b border-line py-2 text-lead">
            {change}
          </li>
        ))}
      </ul>
      {news.assumed.map((words) => (
        <p key={words} className="mt-2 text-soft">
          {words}
        </p>
      ))}
      <p className="mt-2 text-lead">Wrap at {news.wrap}</p>
    </>
  );
}
