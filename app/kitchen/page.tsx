import type { Metadata } from 'next';
import { ButtonForm } from '../_forms/button-form';
import { EmptyState } from '../_ui/empty-state';
import { SlateHead } from '../_ui/slate-head';
import { readKitchen } from '#lib/store/read-kitchen';
import { readShopWalks } from '#lib/store/read-shop-walks';
import { makeKitchen } from './actions';
import { KitchenView } from './_components/kitchen-view';

export const metadata: Metadata = { title: 'Kitchen' };

export default async function KitchenPage() {
  const stored = await readKitchen();
  if (stored) {
    const zones = ['UTC', ...Intl.supportedValuesOf('timeZone')];
    return <KitchenView stored={stored} zones={zones} shops={await readShopWalks()} />;
  }
  return (
    <>
      <SlateHead kind="Kitchen" title="My kitchen" />
      <EmptyState
        title="A kitchen is taken for granted"
        action={
          <ButtonForm action={makeKitchen} values={{}} tone="go" size="usual">
            Begin with it and change it
          </ButtonForm>
        }
      >
        One oven with two racks, four burners, a scale that shows whole grams: common practice, no
        source. Plans and ranges rest on it until you say how yours is.
      </EmptyState>
    </>
  );
}
