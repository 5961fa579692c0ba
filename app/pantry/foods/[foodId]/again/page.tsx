import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SlateHead } from '../../../../_ui/slate-head';
import { ROUNDING_RULES } from '#lib/foods/food-lists';
import { readStoredFood } from '#lib/store/read-foods';
import { LabelForm } from '../../../_components/label-form';
import { emptyLabel, labelTexts } from '../../../_components/label-texts';
import { SameLabel } from '../../../_components/same-label';
import { readLabelAgain } from '../../../actions';

export const metadata: Metadata = { title: 'Read a label again' };

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
  readonly searchParams: Promise<{ readonly rule?: string | string[] }>;
}

export default async function ReadAgainPage({ params, searchParams }: Props) {
  const { foodId } = await params;
  const { rule: asked } = await searchParams;
  const stored = await readStoredFood(foodId);
  if (!stored?.own) notFound();
  const { food, packs } = stored;
  const rule = ROUNDING_RULES.find((each) => each === asked) ?? food.version.rule;
  const last = labelTexts(food);
  return (
    <>
      <SlateHead kind="Read the label again" title={food.name} />
      <SameLabel foodId={foodId} dateRead={food.version.dateRead} />
      <LabelForm
        id="read-again"
        action={readLabelAgain}
        hidden={{ foodId }}
        rule={rule}
        texts={rule === food.version.rule ? last : { ...last, ...emptyLabel(rule) }}
        submit="Keep this reading"
        cancelHref={`/pantry/foods/${foodId}`}
        packs={packs}
      />
    </>
  );
}
