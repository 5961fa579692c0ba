import { FigureText } from '../../../_ui/figure-view';
import { PartsBar } from '../../../_ui/parts-bar';
import { pictureBars, type BarPart, type PictureBar } from '#lib/figures/breakdown-picture';
import { eatenScope } from '#lib/figures/eaten-scope';
import { printFigure } from '#lib/figures/print-figure';
import type { NumberScope } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { breakdownHref } from '../breakdown/href';
import type { EpisodeView } from './view';

interface Props {
  readonly view: Pick<EpisodeView, 'file' | 'figures' | 'numbers'>;
  readonly scope: NumberScope;
  /** Where the headline numbers stand over it already, their bars have their names alone. */
  readonly underNumbers?: boolean;
}

/** A bar for each nutrient: of a dish by its ingredients, of the day by its dishes and against its targets. */
export function Picture({ view, scope, underNumbers = false }: Props) {
  const bars = pictureBars(view.file, scope);
  if (bars.every(({ parts }) => parts.length === 0)) return null;
  return (
    <div className="grid gap-x-8 gap-y-8 md:grid-cols-2 lg:grid-cols-4 print:grid-cols-4 print:gap-x-3">
      {bars.map((bar) => (
        <PartsBar
          key={bar.nutrient}
          bar={bar}
          note={
            scope.kind === 'day'
              ? (part) => <DishNumber view={view} bar={bar} part={part} />
              : undefined
          }
        >
          <BarNumber view={view} scope={scope} bar={bar} underNumbers={underNumbers} />
        </PartsBar>
      ))}
    </div>
  );
}

function BarNumber({
  view,
  scope,
  bar,
  underNumbers = false,
}: Props & { readonly bar: PictureBar }) {
  const { nutrient, figure } = bar;
  const counted = view.figures.nutrients.includes(nutrient);
  const published = counted ? view.numbers(nutrient, scope) : printFigure(figure);
  const label = <span className="lettering block text-soft">{published.label}</span>;
  if (underNumbers && HEADLINE_NUTRIENTS.some((each) => each === nutrient)) return label;
  return (
    <>
      {label}
      <FigureText
        figure={figure}
        published={published}
        href={breakdownHref(view.file.episode.id, scope, nutrient)}
        whisker
      />
    </>
  );
}

/** What a dish gives to the day, as it is published. */
function DishNumber({
  view,
  bar: { nutrient },
  part,
}: Pick<Props, 'view'> & { readonly bar: PictureBar; readonly part: BarPart }) {
  const dish = view.figures.dishes.find(({ segmentId }) => segmentId === part.key);
  const figure = dish?.eaten[nutrient];
  if (!figure) return null;
  const scope = eatenScope(view.file, part.key);
  return (
    <FigureText
      figure={figure}
      published={view.numbers(nutrient, { kind: 'eaten', segmentId: part.key })}
      href={breakdownHref(view.file.episode.id, scope, nutrient)}
    />
  );
}
