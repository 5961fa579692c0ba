import Link from 'next/link';
import { ButtonLink } from '../../_ui/button';
import { EmptyState } from '../../_ui/empty-state';
import { RowHead, Table, Td, Th, Tr } from '../../_ui/table';
import { cellOf } from '#lib/foods/food';
import { cellShown } from '#lib/foods/read-cell';
import { SECTION_WORDS } from '#lib/shopping/shopping-text';
import type { Page } from '#lib/store/page';
import type { StoredFood } from '#lib/store/read-foods';

const BASIS_WORDS = { per100g: '100 g', per100ml: '100 ml', serving: 'a serving' } as const;

/** The creator's own foods by name, with what their labels say. */
export function OwnFoods({ foods }: { readonly foods: Page<StoredFood> }) {
  const add = (
    <ButtonLink href="/pantry/foods/new" tone="go">
      New food from a label
    </ButtonLink>
  );
  if (foods.rows.length === 0) {
    return (
      <EmptyState title="No own foods yet" action={add}>
        A food of your own is read from its package label. Foods of the reference table are there
        already: look them up above.
      </EmptyState>
    );
  }
  const head = (
    <>
      <Th>food</Th>
      <Th>in</Th>
      <Th number>calories</Th>
      <Th number>protein, g</Th>
      <Th>read</Th>
      <Th>in a shop</Th>
    </>
  );
  return (
    <>
      <div className="my-3">{add}</div>
      <Table caption="Own foods" head={head}>
        {foods.rows.map(({ food }) => (
          <Tr key={food.id}>
            <RowHead>
              <Link
                className="link inline-flex min-h-8 items-center"
                href={`/pantry/foods/${food.id}`}
              >
                {food.name}
              </Link>
            </RowHead>
            <Td>{BASIS_WORDS[food.version.basis]}</Td>
            <Td number>{cellShown(cellOf(food.version.values, 'energyKcal'))}</Td>
            <Td number>{cellShown(cellOf(food.version.values, 'protein'))}</Td>
            <Td>{food.version.dateRead ?? '–'}</Td>
            <Td>{SECTION_WORDS[food.section]}</Td>
          </Tr>
        ))}
      </Table>
      {foods.next && (
        <Link
          className="link inline-flex min-h-11 items-center"
          href={`/pantry?foods=${foods.next}#foods`}
        >
          More foods
        </Link>
      )}
    </>
  );
}
