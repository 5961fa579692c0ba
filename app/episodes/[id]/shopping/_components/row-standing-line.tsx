import { Button } from '../../../../_ui/button';
import type { ShelfUnits } from '#lib/episode/stock-schema';
import { takenText, type RowStanding } from '#lib/shopping/basket';
import type { BasketEvent } from '#lib/shopping/fold-list';

interface Props {
  readonly standing: RowStanding;
  readonly event: BasketEvent | undefined;
  readonly units: ShelfUnits;
  readonly name: string;
  readonly ready: boolean;
  /** Whether its form is open. */
  readonly asking: boolean;
  readonly onAsk: () => void;
}

/** Where a food stands: not there yet, put away, or something else taken. */
export function RowStandingLine(props: Props) {
  const { standing, event, units, name, ready, asking, onAsk } = props;
  if (standing === 'putAway') {
    return <span className="block text-fine font-semibold print:hidden">Put away</span>;
  }
  if (standing === 'instead' && event?.kind === 'instead') {
    const { payload } = event;
    const amount = takenText(payload.packs, units);
    return (
      <span className="block font-semibold print:hidden">
        Instead: {payload.name}
        {amount && `, ${amount}`}
      </span>
    );
  }
  if (standing === 'inBasket' || asking) return null;
  return (
    <span className="mt-1 block print:hidden">
      <Button type="button" disabled={!ready} onClick={onAsk}>
        Not there…<span className="unseen"> {name}</span>
      </Button>
    </span>
  );
}
