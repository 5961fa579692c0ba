import { ButtonForm } from '../../_forms/button-form';
import { keepSameLabel } from '../actions';

interface Props {
  readonly foodId: string;
  readonly dateRead: string | null;
}

/** One press where the label in the hand says what it said last time. */
export function SameLabel({ foodId, dateRead }: Props) {
  return (
    <div className="mb-6 flex flex-wrap items-center gap-x-5 gap-y-2 print:hidden">
      <ButtonForm action={keepSameLabel} values={{ foodId }} tone="plain" size="usual">
        Same label as last time
      </ButtonForm>
      <p className="max-w-[55ch] text-soft">
        {dateRead === null ? 'A reading of today' : `Last read ${dateRead}; a reading of today`} is
        added, and the one before stays. Numbers locked with it are told as broken where a value
        changes.
      </p>
    </div>
  );
}
