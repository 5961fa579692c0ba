import { useState } from 'react';
import type { Episode } from '#lib/episode/schema';
import type { DayDish, DishesOnDay } from '#lib/overview/dishes-on-day';
import type { DaySay } from '#lib/overview/says-of';
import type { DayEvent, Entry } from '#lib/shoot/day-log';
import { foldScale, readingId, weighingsNow } from '#lib/shoot/day-weighings';
import type { DayFold } from '#lib/shoot/fold-day';
import { foldSaid } from '#lib/shoot/fold-said';
import { unweighedOf } from '#lib/shoot/unweighed';
import type { DayState } from '../_log/day-sync';
import { SaidWarnings } from '../_say/said-warnings';
import { SayThis } from '../_say/say-this';
import { warningsOf } from '../_say/warnings';
import { ScalePanel } from '../_scale/scale-panel';
import { useDishes } from '../_scale/use-dishes';
import { usePhotos } from '../../../../../_sync/use-photos';
import type { LiveRow } from '../live-row';

interface Props {
  readonly dayId: string;
  readonly region: Episode['region'];
  readonly first: DishesOnDay;
  readonly sayAddress: string;
  readonly photoAddress: string;
  readonly state: DayState;
  /** All entries of the day, those that wait on this device with them. */
  readonly events: readonly DayEvent[];
  readonly waiting: readonly DayEvent[];
  readonly rows: readonly LiveRow[];
  readonly fold: DayFold;
  /** The step at hand. */
  readonly step: LiveRow | null;
  readonly clock: (at: string) => string;
  readonly onEnter: (entry: Entry) => Promise<void>;
  /** For who does not see the screen. */
  readonly onTold: (words: string) => void;
}

/** What is weighed on the day, and what is said of it. */
export function ScaleAndSay(props: Props) {
  const { dayId, region, first, state, events, waiting, rows, fold, step, clock } = props;
  const { onEnter, onTold } = props;
  const { connected, cursor, ready } = state;
  const answer = useDishes({ address: props.sayAddress, dayId, first }, cursor, connected, waiting);
  const [chosen, setChosen] = useState<{ readonly for: string; readonly segmentId: string }>();
  const scale = foldScale(events);
  const said = foldSaid(events);
  const counted = new Set(answer.counted);
  const named = state.known.flatMap((one) => (one.kind === 'display' ? one.payload.sha256 : []));
  const photos = usePhotos(
    props.photoAddress,
    `day=${encodeURIComponent(dayId)}`,
    named,
    connected,
  );
  const dishes = answer.dishes.map((dish) => ({
    ...dish,
    weighings: weighingsNow({ id: dish.recipeId, weighings: dish.weighings }, scale, counted),
  }));
  const at = step?.key ?? '';
  const wanted = chosen?.for === at ? chosen.segmentId : step?.segmentId;
  const atHand = dishes.find(({ segmentId }) => segmentId === wanted) ?? dishes[0];
  const notCounted = events.filter(
    ({ kind, id }) => kind === 'weighed' && !counted.has(readingId(id)),
  ).length;

  const say = ({ scope, line }: DaySay) => {
    if (!line.ready) return;
    onTold('Locked as said.');
    const { text, numbers } = line;
    void onEnter({ kind: 'said', refs: step?.ref ?? {}, payload: { scope, text, numbers } });
  };
  const unsay = ({ id }: { readonly id: string }) => {
    onTold('Not said after all.');
    void onEnter({ kind: 'unsaid', refs: {}, payload: { saidId: id } });
  };
  return (
    <>
      <SaidWarnings
        warnings={warningsOf(said, dishes, rows, fold, region)}
        ready={ready}
        onSaid={say}
        onUnsaid={unsay}
      />
      <ScalePanel
        dayId={dayId}
        dishes={dishes}
        scales={answer.scales}
        displays={scale.displays}
        step={{
          segmentId: step?.segmentId ?? null,
          title: step?.title ?? '',
          ref: step?.ref ?? null,
        }}
        ready={ready}
        srcOf={photos.srcOf}
        unsent={photos.waiting}
        clock={clock}
        onEnter={onEnter}
        onPhoto={photos.add}
        onSaid={onTold}
      />
      {atHand && (
        <SayThis
          dishes={dishes}
          dish={atHand}
          said={said}
          unweighedOf={(dish: DayDish) =>
            unweighedOf(
              dish.lines,
              dish.weighings,
              scale.displays.filter(({ recipeId }) => recipeId === dish.recipeId),
            )
          }
          notCounted={connected ? 0 : notCounted}
          ready={ready}
          clock={clock}
          onDish={(segmentId) => setChosen({ for: at, segmentId })}
          onSaid={say}
          onUnsaid={unsay}
        />
      )}
    </>
  );
}
