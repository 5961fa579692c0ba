'use client';

import { ButtonForm } from '../../../../_forms/button-form';
import { wasHeard } from '../reading-actions';
import { placeValues } from './place-values';
import type { EditPage, Row } from './view';

/** What may have been said where captions have something else; only what would agree. */
export function Misheard({ page, row }: { readonly page: EditPage; readonly row: Row }) {
  if (row.misheard.length === 0) return null;
  return (
    <div>
      <h4 className="lettering text-fine text-soft">Misheard?</h4>
      <ul>
        {row.misheard.map(({ heard, why }) => (
          <li key={heard} className="flex flex-wrap items-center gap-x-4 gap-y-1 py-1">
            <span>
              “{heard}” would agree: {why}.
            </span>
            <ButtonForm
              action={wasHeard}
              values={{ ...placeValues(page, row), heard }}
              label={`That was said: ${heard}`}
              tone="plain"
            >
              That was said
            </ButtonForm>
          </li>
        ))}
      </ul>
    </div>
  );
}
