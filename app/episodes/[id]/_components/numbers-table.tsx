import { FigureText } from '../../../_ui/figure-view';
import { RowHead, Table, Td, Th, Tr } from '../../../_ui/table';
import { scopeText } from '#lib/figures/breakdown-scope';
import type { DishFigures, Figures } from '#lib/figures/episode-figures';
import type { NumberScope } from '#lib/figures/published-numbers';
import { NUTRIENTS, type Nutrient } from '#lib/foods/nutrients';
import { breakdownHref } from '../breakdown/href';
import type { EpisodeView } from './view';

/** An amount of a dish or of the day, with its figures. */
export interface NumbersRow {
  readonly name: string;
  readonly scope: NumberScope;
  readonly figures: Figures;
}

/** The amounts of a dish: all of it, its portions, and 100 g where it was weighed. */
export function dishRows(dish: DishFigures): readonly NumbersRow[] {
  const { segmentId, whole, portions, per100g } = dish;
  return [
    { name: 'the whole dish', figures: whole, scope: { kind: 'whole', segmentId } },
    ...portions.map(({ portionId, name, figures }): NumbersRow => {
      return { name, figures, scope: { kind: 'portion', portionId } };
    }),
    ...(per100g
      ? [
          {
            name: '100 g, finished',
            figures: per100g,
            scope: { kind: 'per100g', segmentId },
          } as const,
        ]
      : []),
  ];
}

interface Props {
  readonly caption: string;
  readonly view: Pick<EpisodeView, 'file' | 'numbers'>;
  readonly rows: readonly NumbersRow[];
  readonly nutrients: readonly Nutrient[];
}

/** Amounts against nutrients, as they are published; each number has its whisker and leads to its breakdown. */
export function NumbersTable({ caption, view, rows, nutrients }: Props) {
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
  const starred = rows.some(({ scope, figures }) =>
    nutrients.some((nutrient) => figures[nutrient] && view.numbers(nutrient, scope).onlyByRounding),
  );
  const said = rows.flatMap(({ name, scope, figures }) => {
    const told = nutrients.flatMap((nutrient) => {
      const found = figures[nutrient] && view.numbers(nutrient, scope).said;
      return found ? [`${found.words}${found.outside ? ', † outside its range' : ''}`] : [];
    });
    return told.length > 0 ? [`${name}: ${told.join('; ')}`] : [];
  });
  return (
    <>
      <Table caption={caption} head={head}>
        {rows.map(({ name, scope, figures }) => (
          <Tr key={scopeText(scope)}>
            <RowHead>{name}</RowHead>
            {nutrients.map((nutrient) => {
              const figure = figures[nutrient];
              return (
                <Td key={nutrient} number>
                  {figure && (
                    <FigureText
                      figure={figure}
                      published={view.numbers(nutrient, scope)}
                      href={breakdownHref(view.file.episode.id, scope, nutrient)}
                      whisker
                    />
                  )}
                </Td>
              );
            })}
          </Tr>
        ))}
      </Table>
      {starred && <p className="mt-1 text-fine">* adds up only because of rounding</p>}
      {said.map((words) => (
        <p key={words} className="mt-1 text-fine">
          {words}
        </p>
      ))}
    </>
  );
}
