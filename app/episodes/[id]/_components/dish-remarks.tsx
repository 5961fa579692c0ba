import Link from 'next/link';
import type { ReactNode } from 'react';
import type { Dish } from '#lib/episode/context';
import { energyRemark } from '#lib/figures/energy-remark';
import { labelRemarks } from '#lib/figures/label-remark';
import type { NumberScope } from '#lib/figures/published-numbers';
import { zeroLabelRemarks } from '#lib/figures/zero-label-remark';
import { BoundOffers } from './bound-offers';
import { editHref, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

/** What speaks against a dish's numbers, and what of them is missing and too small to matter. Nothing where all is well. */
export function DishRemarks({ view, dish }: Props) {
  const { id: episodeId } = view.file.episode;
  const energy = energyRemark(view.file, view.figures, view.numbers, {
    kind: 'whole',
    segmentId: dish.id,
  });
  const labels = labelRemarks(view.file, dish.id);
  const zeros = zeroLabelRemarks(view.file, view.figures, dish.id);
  return (
    <>
      {(energy || labels.length + zeros.length > 0) && (
        <section aria-label={`Remarks: ${dish.title}`} className="mt-5 print:hidden">
          <ul className="border-l-[3px] border-ink pl-3">
            {labels.map(({ foodId, words }) => (
              <Remark key={foodId} words={words}>
                <Go href={`/pantry/foods/${foodId}/again`}>Read the label again</Go>
              </Remark>
            ))}
            {zeros.map(({ lineId, words, witness }) => (
              <Remark key={lineId} words={words}>
                <Go href={editHref(episodeId, lineId)}>
                  {witness === null ? 'Choose a reference food' : `Choose one, such as ${witness}`}
                </Go>
              </Remark>
            ))}
            {energy && <Remark words={energy.words} />}
          </ul>
        </section>
      )}
      <BoundOffers view={view} dish={dish} />
    </>
  );
}

function Remark({ words, children }: { readonly words: string; readonly children?: ReactNode }) {
  return (
    <li className="max-w-[75ch] py-1">
      {words} {children}
    </li>
  );
}

function Go({ href, children }: { readonly href: string; readonly children: ReactNode }) {
  return (
    <Link className="link inline-flex min-h-6 items-center" href={href} prefetch={false}>
      {children}
    </Link>
  );
}

/** Where the printed protein, fat and carbohydrate of an amount do not give its printed calories, and why. */
export function EnergyNote({
  view,
  scope,
}: {
  readonly view: Pick<EpisodeView, 'file' | 'figures' | 'numbers'>;
  readonly scope: NumberScope;
}) {
  const remark = energyRemark(view.file, view.figures, view.numbers, scope);
  if (!remark) return null;
  return <p className="mt-4 max-w-[64ch] text-fine text-soft">{remark.words}</p>;
}
