import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { SlateHead } from '../../../../_ui/slate-head';
import { readStoredFood } from '#lib/store/read-foods';
import { LabelForm } from '../../../_components/label-form';
import { labelTexts, panelRule } from '../../../_components/label-texts';
import { readLabelAgain } from '../../../actions';

export const metadata: Metadata = { title: 'Read a label again' };

interface Props {
  readonly params: Promise<{ readonly foodId: string }>;
}

export default async function ReadAgainPage({ params }: Props) {
  const { foodId } = await params;
  const stored = await readStoredFood(foodId);
  if (!stored?.own) notFound();
  const { food } = stored;
  return (
    <>
      <SlateHead kind="Read the label again" title={food.name} />
      <p className="mb-6 max-w-[65ch] text-soft">
        This adds a reading; the one before stays. Numbers that were locked with it are told as
        broken.
      </p>
      <LabelForm
        id="read-again"
        action={readLabelAgain}
        hidden={{ foodId }}
        rule={panelRule(food.version)}
        texts={labelTexts(food)}
        submit="Keep this reading"
        cancelHref={`/pantry/foods/${foodId}`}
      />
    </>
  );
}
