import { ButtonForm } from '../../_forms/button-form';
import { emptyLot } from '../stock-actions';

interface Props {
  readonly lotId: string;
  /** What is used or thrown away, for who cannot see the row: '87 g, fridge'. */
  readonly of: string;
}

/** The two presses that empty a lot. */
export function LotEndings({ lotId, of }: Props) {
  return (
    <>
      <ButtonForm
        action={emptyLot}
        values={{ lotId, kind: 'used' }}
        tone="plain"
        size="usual"
        label={`All used: ${of}`}
      >
        All used
      </ButtonForm>
      <ButtonForm
        action={emptyLot}
        values={{ lotId, kind: 'thrownAway' }}
        tone="hand"
        size="usual"
        label={`Thrown away: ${of}`}
      >
        Thrown away
      </ButtonForm>
    </>
  );
}
