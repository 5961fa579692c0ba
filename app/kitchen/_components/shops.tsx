import { ButtonForm } from '../../_forms/button-form';
import type { Section } from '#lib/foods/food';
import { SECTION_WORDS } from '#lib/shopping/shopping-text';
import { sectionsInOrder } from '#lib/shopping/walk';
import type { StoredKitchen } from '#lib/store/read-kitchen';
import type { StoredShop } from '#lib/store/read-shop-walks';
import { permilleTyped } from '#lib/units/read-typed';
import { moveSection, removeShop } from '../shop-actions';
import { ShelfForm, ShopForm } from './shop-forms';

interface Props extends StoredKitchen {
  readonly shops: readonly StoredShop[];
}

/** How shopping lists are written, and the shops with their sections in the order of walking. */
export function Shops({ kitchen, revs, shops }: Props) {
  return (
    <>
      <ShelfForm
        hidden={{ kitchenId: kitchen.id, rev: revs[kitchen.id] ?? 0 }}
        values={{
          shelfUnits: kitchen.shelfUnits,
          drift: permilleTyped(kitchen.priceDriftPermille),
        }}
      />
      <ul className={shops.length === 0 ? '' : 'mt-6 border-t border-line'}>
        {shops.map((stored) => (
          <ShopItem key={stored.shop.id} {...stored} />
        ))}
      </ul>
      <details>
        <summary className="link min-h-11 content-center">Add a shop</summary>
        <ShopForm id="new-shop" name="" hidden={{}} isNew />
      </details>
    </>
  );
}

function ShopItem({ shop, rev }: StoredShop) {
  const { id, name } = shop;
  const order = sectionsInOrder(shop.sections);
  return (
    <li className="border-b border-line py-1">
      <details>
        <summary className="min-h-11 content-center wrap-anywhere">{name}</summary>
        <div className="my-3 grid gap-3">
          <ShopForm id={`shop-${id}`} name={name} hidden={{ shopId: id, rev }} />
          <ol className="md:max-w-xl">
            {order.map((section, at) => (
              <SectionRow
                key={section}
                shopId={id}
                section={section}
                isFirst={at === 0}
                isLast={section === order.at(-1)}
              />
            ))}
          </ol>
          <div>
            <ButtonForm action={removeShop} values={{ shopId: id, rev }} tone="hand">
              Take out {name} and its prices
            </ButtonForm>
          </div>
        </div>
      </details>
    </li>
  );
}

interface RowProps {
  readonly shopId: string;
  readonly section: Section;
  readonly isFirst: boolean;
  readonly isLast: boolean;
}

function SectionRow({ shopId, section, isFirst, isLast }: RowProps) {
  const words = SECTION_WORDS[section];
  const move = (to: 'up' | 'down') => (
    <ButtonForm
      action={moveSection}
      values={{ shopId, section, to }}
      label={`Walk to ${words} ${to === 'up' ? 'earlier' : 'later'}`}
    >
      {to === 'up' ? 'Up' : 'Down'}
    </ButtonForm>
  );
  return (
    <li className="flex min-h-11 items-center justify-between gap-4">
      {words}
      <span className="flex items-center gap-2">
        {!isFirst && move('up')}
        {!isLast && move('down')}
      </span>
    </li>
  );
}
