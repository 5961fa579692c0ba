import { FigureList, FigureView } from '../../../_ui/figure-view';
import type { DishFigures as Dish } from '#lib/figures/episode-figures';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { breakdownHref } from '../breakdown/href';
import { dishRows, NumbersTable } from './numbers-table';
import { Picture } from './picture';
import type { EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

/** A dish's numbers: the whole with whiskers, its portions, and the rest of the panel on asking. */
export function DishFigures({ view, dish }: Props) {
  const rows = dishRows(dish);
  const parts = rows.slice(1);
  const whole = { kind: 'whole', segmentId: dish.segmentId } as const;
  return (
    <>
      <FigureList>
        {HEADLINE_NUTRIENTS.map((nutrient) => {
          const figure = dish.whole[nutrient];
          if (!figure) return null;
          const published = view.numbers(nutrient, whole);
          return (
            <FigureView
              key={nutrient}
              figure={figure}
              published={published}
              href={breakdownHref(view.file.episode.id, whole, nutrient)}
              size={nutrient === HEADLINE_NUTRIENTS[0] ? 'lead' : 'large'}
            />
          );
        })}
      </FigureList>
      {parts.length > 0 && (
        <div className="mt-6">
          <NumbersTable
            caption={`${dish.title}: numbers by portion`}
            view={view}
            rows={parts}
            nutrients={HEADLINE_NUTRIENTS}
          />
        </div>
      )}
      <details className="mt-2">
        <summary className="link min-h-11 content-center text-fine">
          Which ingredients it comes from
        </summary>
        <div className="mt-2 mb-4">
          <Picture view={view} scope={whole} underNumbers />
        </div>
      </details>
      <details>
        <summary className="link min-h-11 content-center text-fine">The whole panel</summary>
        <NumbersTable
          caption={`${dish.title}: the whole panel`}
          view={view}
          rows={rows}
          nutrients={view.figures.nutrients}
        />
      </details>
    </>
  );
}
