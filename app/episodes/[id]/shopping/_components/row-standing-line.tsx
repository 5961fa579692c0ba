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
    return <span className="font-semibold">Put away</span>;
  }
  if (standing === 'instead' && event?.kind === 'instead') {
    const { payload } = event;
    const amount = takenText(payload.packs, units);
    return (
      <span className="font-semibold">
        Instead: {payload.name}
        {amount && `, ${amount}`}
      </span>
    );
  }
  if (standing === 'inBasket' || asking) return null;
  return (
    <Button type="button" disabled={!ready} onClick={onAsk}>
      Not there…<span className="unseen"> {name}</span>
    </Button>
  );
}
