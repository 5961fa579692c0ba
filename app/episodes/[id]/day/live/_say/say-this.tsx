import { Button } from '../../../../../_ui/button';
import { CONTROL } from '../../../../../_ui/form/field';
import type { DayDish } from '#lib/overview/dishes-on-day';
import type { DaySay } from '#lib/overview/says-of';
import type { SaidLine } from '#lib/episode/said-line';
import { scopeKey } from '#lib/episode/said-scope';
import type { Unweighed } from '#lib/shoot/unweighed';

interface Props {
  readonly dishes: readonly DayDish[];
  /** The dish at hand, or the one that was chosen. */
  readonly dish: DayDish;
  readonly said: readonly SaidLine[];
  readonly unweighedOf: (dish: DayDish) => readonly Unweighed[];
  /** Readings on this device that the lines don't have yet. */
  readonly notCounted: number;
  readonly ready: boolean;
  readonly clock: (at: string) => string;
  readonly onDish: (segmentId: string) => void;
  readonly onSaid: (say: DaySay) => void;
  readonly onUnsaid: (said: SaidLine) => void;
}

/** What can be said of the plate while it is hot, and the button that locks it there and then. */
export function SayThis(props: Props) {
  const { dishes, dish, said, unweighedOf, notCounted, ready, clock } = props;
  const open = unweighedOf(dish);
  const before = dishes
    .filter(({ title }) => dish.soFar.includes(title))
    .filter(({ segmentId }) => segmentId !== dish.segmentId)
    .filter((other) => unweighedOf(other).length > 0);
  return (
    <section aria-labelledby="say" className="mt-6 border-[1.5px] border-ink bg-raised p-4">
      <h2 id="say" className="lettering text-lead text-soft uppercase">
        Say this
      </h2>
      {dishes.length > 1 && (
        <label className="mt-2 grid gap-1 font-semibold">
          Dish
          <select
            className={`${CONTROL} min-h-14`}
            value={dish.segmentId}
            onChange={({ target }) => props.onDish(target.value)}
          >
            {dishes.map(({ segmentId, title }) => (
              <option key={segmentId} value={segmentId}>
                {title}
              </option>
            ))}
          </select>
        </label>
      )}
      {open.length > 0 && (
        <p className="mt-3 text-lead">
          <b className="font-semibold text-hand">Still unweighed, as planned for now: </b>
          {open.map(unweighedWords).join(', ')}
        </p>
      )}
      {notCounted > 0 && (
        <p className="mt-2 text-lead font-semibold text-hand">
          {notCounted === 1 ? '1 weight is' : `${notCounted} weights are`} not in these lines yet:
          the program cannot be reached.
        </p>
      )}
      <ul className="mt-2">
        {dish.says.map((say, at) => (
          <Line
            key={scopeKey(say.scope)}
            say={say}
            first={at === 0}
            said={said.find((one) => scopeKey(one.scope) === scopeKey(say.scope)) ?? null}
            {...{ ready, clock, onSaid: props.onSaid, onUnsaid: props.onUnsaid }}
          />
        ))}
      </ul>
      {before.length > 0 && (
        <p className="mt-2 text-fine text-soft">
          The day also has dishes with unweighed ingredients:{' '}
          {before.map(({ title }) => title).join(', ')}
        </p>
      )}
    </section>
  );
}

interface LineProps {
  readonly say: DaySay;
  readonly first: boolean;
  readonly said: SaidLine | null;
  readonly ready: boolean;
  readonly clock: (at: string) => string;
  readonly onSaid: (say: DaySay) => void;
  readonly onUnsaid: (said: SaidLine) => void;
}

function Line({ say, first, said, ready, clock, onSaid, onUnsaid }: LineProps) {
  const { about, line } = say;
  return (
    <li className="border-b border-line py-3 last:border-b-0">
      <p className="text-fine text-soft">{about}</p>
      {line.ready ? (
        <>
          <p className={`font-slate font-semibold ${first ? 'text-figure' : 'text-step'}`}>
            {line.text}
          </p>
          {line.halved !== null && <p>{line.halved}</p>}
        </>
      ) : (
        <p className="text-lead">Not yet: {line.why}.</p>
      )}
      {said !== null && (
        <p className="mt-1 text-lead">
          <b className="font-semibold">Said {clock(said.at)}, locked:</b> “{said.text}”
        </p>
      )}
      {say.clashes && (
        <p className="mt-1 font-semibold text-hand">
          What was said of the parts does not add up to this: say one of them again.
        </p>
      )}
      <div className="mt-2 grid gap-2">
        {line.ready && (
          <Button
            type="button"
            tone={first && said === null ? 'go' : 'plain'}
            size="day"
            disabled={!ready}
            onClick={(event) => {
              // The second half of a double press says nothing new.
              if (event.detail <= 1) onSaid(say);
            }}
          >
            {said === null ? 'Said' : 'Said again'}
            <span className="unseen">: {line.text}</span>
          </Button>
        )}
        {said !== null && (
          <Button type="button" size="day" disabled={!ready} onClick={() => onUnsaid(said)}>
            Not said after all<span className="unseen">: {about}</span>
          </Button>
        )}
      </div>
    </li>
  );
}

function unweighedWords({ text, why }: Unweighed): string {
  if (why === 'photo') return `${text} (photo, number not typed)`;
  return why === 'half' ? `${text} (before, and not after)` : text;
}
