import { Button } from '../../../../../_ui/button';
import { shotState } from '#lib/shoot/day-shots';
import type { DayFold } from '#lib/shoot/fold-day';
import type { LiveShot } from '../live-row';

interface Props {
  readonly shots: readonly LiveShot[];
  readonly fold: DayFold;
  readonly ready: boolean;
  readonly onTake: (shot: LiveShot, good: boolean) => void;
}

/** The shots of the step at hand; a press at the end of a take says how it was, and writes when. */
export function ShotsAtHand({ shots, fold, ready, onTake }: Props) {
  if (shots.length === 0) return null;
  return (
    <section aria-labelledby="shots" className="mt-4 border-t border-line pt-3">
      <h3 id="shots" className="lettering text-lead text-soft uppercase">
        Shots
      </h3>
      <ul>
        {shots.map((shot) => (
          <li key={shot.id} className="py-2">
            <p className="text-lead">
              <b className="font-semibold">{shot.title}</b>
              {shot.framing !== '' && `, ${shot.framing}`}
              <span className="block text-soft">{stateWords(shot, fold)}</span>
            </p>
            <div className="mt-2 grid grid-cols-2 gap-3 [&>button]:min-h-20">
              <Button
                type="button"
                tone="go"
                size="day"
                disabled={!ready}
                onClick={() => onTake(shot, true)}
              >
                Good<span className="unseen"> {shot.title}</span>
              </Button>
              <Button
                type="button"
                size="day"
                disabled={!ready}
                onClick={() => onTake(shot, false)}
              >
                Again<span className="unseen"> {shot.title}</span>
              </Button>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}

function stateWords({ id }: LiveShot, fold: DayFold): string {
  const { takes, good } = shotState(fold, id);
  if (takes === 0) return fold.without.has(id) ? 'done without' : 'not yet taken';
  return `${takes === 1 ? '1 take' : `${takes} takes`}, the last ${good ? 'good' : 'to be made again'}`;
}
