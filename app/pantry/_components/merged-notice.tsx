import Link from 'next/link';
import { ButtonForm } from '../../_forms/button-form';
import type { MergedFood } from '#lib/store/read-merged';
import { printDay } from '#lib/units/print-date';
import { takeApart } from '../foods/[foodId]/merge/actions';

interface Props {
  /** The food that this one is part of; null where it stands for itself. */
  readonly partOf: { readonly id: string; readonly name: string } | null;
  /** Foods that are part of this one. */
  readonly within: readonly MergedFood[];
}

/** Says that two foods are one now, and takes them apart again. */
export function MergedNotice({ partOf, within }: Props) {
  if (partOf === null && within.length === 0) return null;
  return (
    <ul className="mb-4 border-l-[6px] border-ink pl-3 print:hidden">
      {partOf && (
        <li>
          This is part of{' '}
          <Link
            className="link inline-flex min-h-11 items-center"
            href={`/pantry/foods/${partOf.id}`}
          >
            {partOf.name}
          </Link>{' '}
          now: dishes, stock and packs stand there.
        </li>
      )}
      {within.map(({ id, name, groupId, at }) => (
        <li key={id} className="flex flex-wrap items-center gap-x-4">
          <span>
            <Link className="link inline-flex min-h-11 items-center" href={`/pantry/foods/${id}`}>
              {name}
            </Link>{' '}
            is part of this food since {printDay(at.toISOString().slice(0, 10))}.
          </span>
          <ButtonForm
            action={takeApart}
            values={{ foodId: id, groupId }}
            label={`Undo: take ${name} apart again`}
            tone="plain"
          >
            Undo
          </ButtonForm>
        </li>
      ))}
    </ul>
  );
}
