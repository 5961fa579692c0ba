import { Disclosure } from '../../../../_ui/disclosure';
import { FigureList, FigureView } from '../../../../_ui/figure-view';
import type { Dish } from '#lib/episode/context';
import type { DishFigures, Figures } from '#lib/figures/episode-figures';
import type { NumberScope } from '#lib/figures/published-numbers';
import type { EpisodeView } from '../../_components/view';
import { breakdownHref } from '../../breakdown/href';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
  readonly figures: DishFigures;
}

const WORDS = {
  US: 'Worked out: carbohydrate less fibre, where a food states both. Sugar alcohols stay in it.',
  EU: 'In the EU carbohydrate is stated without fibre already: this is the same number. Polyols stay in it.',
} as const;

/** Net carbohydrate of a dish, for those who ask for it: named, derived, and never implied by another number. */
export function NetCarbs({ view, dish, figures }: Props) {
  const portion = dish.recipe.portions.find((each) => each.kind === 'count');
  const one = portion && figures.portions.find(({ portionId }) => portionId === portion.id);
  return (
    <div className="mt-4">
      <Disclosure words="Net carbs">
        <p className="mb-3 max-w-[60ch] text-fine text-soft">{WORDS[view.file.episode.region]}</p>
        <div className="flex flex-wrap gap-x-14 gap-y-6">
          {portion && one && (
            <Net
              view={view}
              title={`One of ${portion.of}`}
              figures={one.figures}
              scope={{ kind: 'portion', portionId: portion.id }}
            />
          )}
          <Net
            view={view}
            title="The whole dish"
            figures={figures.whole}
            scope={{ kind: 'whole', segmentId: dish.id }}
          />
        </div>
      </Disclosure>
    </div>
  );
}

interface NetProps {
  readonly view: EpisodeView;
  readonly title: string;
  readonly figures: Figures;
  readonly scope: NumberScope;
}

function Net({ view, title, figures, scope }: NetProps) {
  const figure = figures.netCarbohydrate;
  if (!figure) return null;
  return (
    <div>
      <h3 className="mb-2">{title}</h3>
      <FigureList>
        <FigureView
          figure={figure}
          published={view.numbers('netCarbohydrate', scope)}
          href={breakdownHref(view.file.episode.id, scope, 'netCarbohydrate')}
          size="usual"
        />
      </FigureList>
    </div>
  );
}
