'use server';

import { v7 as uuid } from 'uuid';
import { failed } from '#lib/result';
import { SECTION_WORDS } from '#lib/shopping/shopping-text';
import { movedSection } from '#lib/shopping/walk';
import { readShopWalk } from '#lib/store/read-shop-walks';
import { removalEdits } from '#lib/store/remove-rows';
import { fieldOfColumn, parseThenAct } from '../_forms/parse-then-act';
import type { FormState } from '../_ui/form/form-state';
import { change } from './change';
import { moveSectionForm, newShopForm, removeShopForm, shelfForm, shopForm } from './shop-schema';

const GONE = failed({
  path: '',
  code: 'gone',
  message: 'This shop is no longer there: open the page again.',
});

const fieldOf = (path: string) => {
  const column = fieldOfColumn(path);
  return column === 'priceDriftPermille' ? 'drift' : column;
};

export async function saveShelf(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(
    shelfForm,
    state,
    form,
    ({ kitchenId, rev, shelfUnits, drift }) => {
      const patch = { shelfUnits, priceDriftPermille: drift };
      const label = 'Change how shopping lists are written';
      return change(label, [{ op: 'update', entity: 'Kitchen', id: kitchenId, rev, patch }]);
    },
    fieldOf,
  );
}

export async function addShop(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(newShopForm, state, form, ({ name }) =>
    change(`Add the shop ${name}`, [{ op: 'create', entity: 'Shop', row: { id: uuid(), name } }]),
  );
}

export async function saveShop(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(shopForm, state, form, ({ shopId, rev, name }) =>
    change(`Change the shop ${name}`, [
      { op: 'update', entity: 'Shop', id: shopId, rev, patch: { name } },
    ]),
  );
}

/** Its prices go with it, and come back with it. */
export async function removeShop(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(removeShopForm, state, form, async ({ shopId, rev }) =>
    change('Take a shop out', await removalEdits('Shop', shopId, rev)),
  );
}

export async function moveSection(state: FormState, form: FormData): Promise<FormState> {
  return parseThenAct(moveSectionForm, state, form, async ({ shopId, section, to }) => {
    const stored = await readShopWalk(shopId);
    if (!stored) return GONE;
    const { shop, rev } = stored;
    const sections = [...movedSection(shop.sections, section, to)];
    const label = `Walk to ${SECTION_WORDS[section]} ${to === 'up' ? 'earlier' : 'later'}`;
    return change(label, [{ op: 'update', entity: 'Shop', id: shopId, rev, patch: { sections } }]);
  });
}
