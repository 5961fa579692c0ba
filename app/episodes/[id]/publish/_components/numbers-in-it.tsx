import { HEADLINE_NUTRIENTS } from '#lib/figures/shown-nutrients';
import { dishRows, NumbersTable } from '../../_components/numbers-table';
import type { PublishPage } from './view';

/** The numbers of the text, which is plain and has no links, each with the way to its breakdown. */
export function NumbersInIt({ page }: { readonly page: PublishPage }) {
  const { dishes, day, dayIsWhole } = page.figures;
  if (dishes.length === 0) return null;
  return (
    <section aria-labelledby="numbers-in-it">
      <h2 id="numbers-in-it">Where its numbers come from</h2>
      <div className="mt-2 grid grid-cols-1 gap-5">
        {dishes.map((dish) => (
          <div key={dish.segmentId}>
            <h3 className="mb-1">{dish.title}</h3>
            <NumbersTable
              caption={`${dish.title}: numbers in the description`}
              view={page}
              rows={dishRows(dish)}
              nutrients={HEADLINE_NUTRIENTS}
            />
          </div>
        ))}
        <NumbersTable
          caption="All dishes: numbers in the description"
          view={page}
          rows={[
            {
              name: dayIsWhole ? 'the day' : 'the dishes shown',
              scope: { kind: 'day' },
              figures: day,
            },
          ]}
          nutrients={HEADLINE_NUTRIENTS}
        />
      </div>
    </section>
  );
}
