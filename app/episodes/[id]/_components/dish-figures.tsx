import { FigureList, FigureText, FigureView } from '../../../_ui/figure-view';
import { RowHead, Table, Td, Th, Tr } from '../../../_ui/table';
import type { DishFigures as Dish, Figures } from '#lib/figures/episode-figures';
import type { PublishedNumber } from '#lib/figures/published-numbers';
import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import type { EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly dish: Dish;
}

interface Scope {
  readonly key: string;
  readonly name: string;
  readonly figures: Figures;
  readonly print: (nutrient: Nutrient) => PublishedNumber;
}

/** A dish's numbers: the whole with whiskers, its portions, and the rest of the panel on asking. */
export function DishFigures({ view, dish }: Props) {
  const scopes = scopesOf(view, dish);
  const [whole, ...parts] = scopes;
  return (
    <>
      <FigureList>
        {HEADLINE_NUTRIENTS.map((nutrient) => {
          const figure = dish.whole[nutrient];
          if (!figure || !whole) return null;
          const published = whole.print(nutrient);
          const note = published.onlyByRounding ? 'adds up only because of rounding' : null;
          return (
            <FigureView
              key={nutrient}
              figure={figure}
              published={published}
              note={note}
              size={nutrient === HEADLINE_NUTRIENTS[0] ? 'lead' : 'large'}
            />
          );
        })}
      </FigureList>
      {parts.length > 0 && (
        <div className="mt-6">
          <Numbers
            caption={`${dish.title}: numbers by portion`}
            scopes={parts}
            nutrients={HEADLINE_NUTRIENTS}
          />
        </div>
      )}
      <details className="mt-2">
        <summary className="link min-h-11 content-center text-fine">The whole panel</summary>
        <Numbers
          caption={`${dish.title}: the whole panel`}
          scopes={scopes}
          nutrients={view.figures.nutrients}
        />
      </details>
    </>
  );
}

function Numbers({
  caption,
  scopes,
  nutrients,
}: {
  readonly caption: string;
  readonly scopes: readonly Scope[];
  readonly nutrients: readonly Nutrient[];
}) {
  const head = (
    <>
      <Th>of</Th>
      {nutrients.map((nutrient) => (
        <Th key={nutrient} number>
          {NUTRIENTS[nutrient].label}
        </Th>
      ))}
    </>
  );
  return (
    <Table caption={caption} head={head}>
      {scopes.map(({ key, name, figures, print }) => (
        <Tr key={key}>
          <RowHead>{name}</RowHead>
          {nutrients.map((nutrient) => {
            const figure = figures[nutrient];
            return (
              <Td key={nutrient} number>
                {figure && <FigureText figure={figure} published={print(nutrient)} />}
              </Td>
            );
          })}
        </Tr>
      ))}
    </Table>
  );
}

function scopesOf({ numbers }: EpisodeView, dish: Dish): readonly Scope[] {
  const { segmentId, whole, portions, per100g } = dish;
  const print = (kind: 'whole' | 'per100g') => (nutrient: Nutrient) =>
    numbers(nutrient, { kind, segmentId });
  return [
    { key: 'whole', name: 'the whole dish', figures: whole, print: print('whole') },
    ...portions.map(({ portionId, name, figures }) => ({
      key: portionId,
      name,
      figures,
      print: (nutrient: Nutrient) => numbers(nutrient, { kind: 'portion', portionId }),
    })),
    ...(per100g
      ? [{ key: '100', name: '100 g, finished', figures: per100g, print: print('per100g') }]
      : []),
  ];
}
