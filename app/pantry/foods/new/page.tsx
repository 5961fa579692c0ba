import type { Metadata } from 'next';
import { SlateHead } from '../../../_ui/slate-head';
import { ROUNDING_RULES } from '#lib/foods/food-lists';
import { readKitchen } from '#lib/store/read-kitchen';
import { readLastLabelRule } from '#lib/store/read-last-label-rule';
import { NewFoodForm } from '../../_components/new-food-form';

export const metadata: Metadata = { title: 'New food' };

interface Props {
  readonly searchParams: Promise<{ readonly rule?: string | string[] }>;
}

/** The panel follows what was asked for, else the last label entered, else the place of the kitchen. */
export default async function NewFoodPage({ searchParams }: Props) {
  const { rule: asked } = await searchParams;
  const stored = await readKitchen();
  const here = stored?.kitchen.zone.startsWith('Europe/') ? 'eu' : 'us';
  const rule = ROUNDING_RULES.find((each) => each === asked) ?? (await readLastLabelRule()) ?? here;
  return (
    <>
      <SlateHead kind="Pantry" title="New food from a label" />
      <NewFoodForm rule={rule} />
    </>
  );
}
