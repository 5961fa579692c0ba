import { Button } from '../../../../../_ui/button';
import type { DayPickup } from '#lib/shoot/fold-day';

interface Props {
  readonly pickups: readonly DayPickup[];
  readonly clock: (at: string) => string;
  readonly titleOf: (rowKey: string) => string | null;
  /** Where the order has a place for it; null where it has none yet. */
  readonly placedAt: (pickupId: string) => string | null;
  readonly onGot: (pickup: DayPickup, got: boolean) => void;
}

/** What is to be got later, and what of it is there. */
export function Pickups({ pickups, clock, titleOf, placedAt, onGot }: Props) {
  if (pickups.length === 0) return null;
  return (
    <section aria-labelledby="pickups" className="mt-10">
      <h2 id="pickups" className="mb-2">
        To get later
      </h2>
      <ul className="border-t-[1.5px] border-ink">
        {pickups.map((pickup) => (
          <li key={pickup.id} className="grid gap-2 border-b border-line py-2">
            <p className="text-lead wrap-anywhere">
              <b className="font-semibold">{pickup.text}</b>
              <span className="block text-fine text-soft">
                {pickup.rowKey !== null &&
                  `${titleOf(pickup.rowKey) ?? 'a step that is no longer in the order'} · `}
                {pickup.gotAt === null ? `since ${clock(pickup.at)}` : `got ${clock(pickup.gotAt)}`}
                {pickup.gotAt === null && placeWords(placedAt(pickup.id), pickup.minutes)}
              </span>
            </p>
            <Button type="button" size="day" onClick={() => onGot(pickup, pickup.gotAt === null)}>
              {pickup.gotAt === null ? 'Got it' : 'Not got after all'}
              <span className="unseen"> {pickup.text}</span>
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function placeWords(at: string | null, minutes: number): string {
  if (at !== null) return `, in the order at ${at}`;
  return `, ${minutes} min, not in the order yet: re-plan from now`;
}
