import { Button } from '../../../../../_ui/button';
import { finishedReadings, lineReadings, type Reading } from '#lib/figures/readings';
import type { DayDish } from '#lib/overview/dishes-on-day';
import type { OpenDisplay } from '#lib/shoot/day-weighings';
import type { Unweighed } from '#lib/shoot/unweighed';
import { scaleGramsText } from '#lib/units/scale-grams';

interface Props {
  readonly dish: DayDish;
  readonly unweighed: readonly Unweighed[];
  readonly displays: readonly OpenDisplay[];
  readonly clock: (at: string) => string;
  readonly onStrikeOut: (id: string, what: string) => void;
  readonly onType: (displayId: string) => void;
}

const KINDS = [
  ['raw', ''],
  ['cooked', ', cooked'],
  ['left', ', left'],
  ['container', ', before'],
] as const;

/** What was weighed of a dish, what is not, and photos whose numbers are still to be typed. */
export function WeighedList({ dish, unweighed, displays, clock, onStrikeOut, onType }: Props) {
  const rows = [
    ...dish.lines.flatMap(({ id, text }) =>
      KINDS.flatMap(([kind, suffix]) =>
        lineReadings(dish, id, kind).readings.map((reading) => ({
          what: text + suffix,
          reading,
        })),
      ),
    ),
    ...finishedReadings(dish).map((reading) => ({ what: 'the finished dish', reading })),
  ];
  const titleOf = (lineId: string | null) =>
    dish.lines.find(({ id }) => id === lineId)?.text ?? 'the finished dish';
  return (
    <>
      {displays.length > 0 && (
        <section aria-labelledby="displays" className="mt-6">
          <h3 id="displays" className="text-head text-hand">
            Photos to be typed
          </h3>
          <ul>
            {displays.map(({ id, at, lineId }) => (
              <li key={id} className="grid gap-2 border-b border-line py-2">
                <p className="text-lead">
                  <b className="font-semibold">{titleOf(lineId)}</b>
                  <span className="block text-fine text-soft">
                    photographed {clock(at)}, provisional until its number is typed
                  </span>
                </p>
                <Button type="button" size="day" onClick={() => onType(id)}>
                  Type its number<span className="unseen"> of {titleOf(lineId)}</span>
                </Button>
                <Button
                  type="button"
                  tone="hand"
                  size="day"
                  onClick={() => onStrikeOut(id, `the photo of ${titleOf(lineId)}`)}
                >
                  Strike it out<span className="unseen">, the photo of {titleOf(lineId)}</span>
                </Button>
              </li>
            ))}
          </ul>
        </section>
      )}
      <section aria-labelledby="weighed" className="mt-6">
        <h3 id="weighed" className="text-head">
          Weighed of {dish.title}
        </h3>
        {rows.length === 0 && <p className="text-soft">Nothing yet.</p>}
        <ul>
          {rows.map(({ what, reading }) => (
            <li
              key={`${reading.weighing.id} ${what}`}
              className="grid grid-cols-[1fr_auto] items-center gap-x-3 gap-y-1 border-b border-line py-2"
            >
              <p className="text-lead wrap-anywhere">
                <b className="font-semibold">{scaleGramsText(reading.netMg)} g</b> {what}
                <span className="block text-fine text-soft">{howWords(reading, clock)}</span>
              </p>
              <div className="w-36">
                <Button
                  type="button"
                  tone="hand"
                  size="day"
                  onClick={() => onStrikeOut(reading.weighing.id, what)}
                >
                  Strike out<span className="unseen"> {what}</span>
                </Button>
              </div>
            </li>
          ))}
        </ul>
        {unweighed.length > 0 && (
          <p className="mt-2 text-soft">
            Still to be weighed: {unweighed.map(({ text }) => text).join(', ')}
          </p>
        )}
      </section>
    </>
  );
}

function howWords({ weighing, shared }: Reading, clock: (at: string) => string): string {
  const { grossMg, tareMg, method, afterId, at } = weighing;
  const [gross, tare] = [scaleGramsText(grossMg), scaleGramsText(tareMg)];
  const how =
    method === 'difference'
      ? `, ${gross} g less ${tare} g`
      : tareMg === 0
        ? ''
        : `, ${gross} g on the scale, ${tare} g ${afterId === null ? 'of it the container' : 'before'}`;
  return `${clock(at)}${how}${shared ? ', shared with others' : ''}`;
}
