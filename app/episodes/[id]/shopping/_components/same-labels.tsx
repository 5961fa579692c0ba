'use client';

import Link from 'next/link';
import { ButtonForm } from '../../../../_forms/button-form';
import type { ReadLabel } from '#lib/shopping/labels-to-look-at';
import { printDay } from '#lib/units/print-date';
import { keepSameLabelHere } from '../actions';

/** Bought again: makers change recipes, so one look says whether the numbers still hold. */
export function SameLabels({ labels }: { readonly labels: readonly ReadLabel[] }) {
  if (labels.length === 0) return null;
  return (
    <section aria-labelledby="same-label" className="mt-8 print:hidden">
      <h2 id="same-label">Same label as last time?</h2>
      <p className="max-w-[60ch] text-soft">
        Makers change recipes. Where a label says what it said, one press keeps that as a reading of
        today.
      </p>
      <ul>
        {labels.map(({ foodId, name, dateRead }) => (
          <li
            key={foodId}
            className="flex flex-wrap items-center justify-between gap-x-5 gap-y-2 border-b border-line py-2"
          >
            <span>
              {name}
              <span className="block text-fine text-soft">
                {dateRead === null ? 'never read on a date' : `read ${printDay(dateRead)}`}
              </span>
            </span>
            <span className="flex flex-wrap items-center gap-3">
              <ButtonForm
                action={keepSameLabelHere}
                values={{ foodId }}
                tone="plain"
                size="usual"
                label={`Same label as last time: ${name}`}
              >
                Same label
              </ButtonForm>
              <Link
                className="link inline-flex min-h-11 items-center"
                href={`/pantry/foods/${foodId}/again`}
              >
                It changed<span className="unseen">: read {name} again</span>
              </Link>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
