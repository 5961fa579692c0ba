import { Button } from '../../../../../_ui/button';
import type { LiveRow } from '../live-row';

/** Minutes that are offered; what takes longer still is pressed again. */
const MINUTES = [5, 10, 15, 30] as const;

interface Props {
  readonly row: LiveRow;
  readonly ready: boolean;
  readonly onLonger: (row: LiveRow, minutes: number) => void;
  readonly onSkip: () => void;
}

/** What only some steps need: more minutes from now on, or none at all. */
export function LongerOrSkip({ row, ready, onLonger, onSkip }: Props) {
  return (
    <details className="mt-4 border-t border-line">
      <summary className="link min-h-14 content-center text-lead">Takes longer, or skip it</summary>
      <fieldset className="grid grid-cols-2 gap-3">
        <legend className="mb-2 text-lead">From now it takes</legend>
        {MINUTES.map((minutes) => (
          <Button
            key={minutes}
            type="button"
            size="day"
            disabled={!ready}
            onClick={() => onLonger(row, minutes)}
          >
            {minutes} min<span className="unseen"> more: {row.title}</span>
          </Button>
        ))}
      </fieldset>
      <div className="mt-3">
        <Button type="button" tone="hand" size="day" disabled={!ready} onClick={onSkip}>
          Skip<span className="unseen"> {row.title}</span>
        </Button>
      </div>
    </details>
  );
}
