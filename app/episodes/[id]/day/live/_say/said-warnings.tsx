import { Button } from '../../../../../_ui/button';
import type { SaidLine } from '#lib/episode/said-line';
import type { SaidChange } from '#lib/lock/said-numbers';
import type { DaySay } from '#lib/overview/says-of';

/** A line that was said, whose numbers have changed since. */
export interface SaidWarning {
  readonly said: SaidLine;
  readonly change: SaidChange;
  /** The dish and what of it: "Barley bowl, one of 4". */
  readonly about: string;
  readonly now: DaySay;
  /** Whether the plate is cut or eaten. */
  readonly plateGone: boolean;
}

interface Props {
  readonly warnings: readonly SaidWarning[];
  readonly ready: boolean;
  readonly onSaid: (say: DaySay) => void;
  readonly onUnsaid: (said: SaidLine) => void;
}

/** What was said and is another number by now, while it can still be said again. */
export function SaidWarnings({ warnings, ready, onSaid, onUnsaid }: Props) {
  return (
    <div role="alert">
      {warnings.map(({ said, change, about, now, plateGone }) => {
        const off = change.kind === 'off';
        return (
          <section
            key={said.id}
            aria-label={`Said, and changed since: ${about}`}
            className={`mb-6 bg-raised p-4 ${off ? 'border-2 border-hand' : 'border-[1.5px] border-ink'}`}
          >
            <h2 className={`text-head ${off ? 'text-hand' : ''}`}>{about}</h2>
            <p className="text-lead font-semibold">{change.words}</p>
            <p className="text-lead">
              {plateGone
                ? 'Its plate is gone: say it again without it.'
                : 'A retake is still possible.'}
            </p>
            {now.line.ready && (
              <p className="my-3 border-l-[6px] border-ink pl-3 font-slate text-step font-semibold">
                {now.line.text}
              </p>
            )}
            <div className="grid gap-3">
              {now.line.ready && (
                <Button
                  type="button"
                  tone={off ? 'go' : 'plain'}
                  size="day"
                  disabled={!ready}
                  onClick={() => onSaid(now)}
                >
                  Said again<span className="unseen">: {now.line.text}</span>
                </Button>
              )}
              <Button type="button" size="day" disabled={!ready} onClick={() => onUnsaid(said)}>
                Not said after all<span className="unseen">: {said.text}</span>
              </Button>
            </div>
          </section>
        );
      })}
    </div>
  );
}
