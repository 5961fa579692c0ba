import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { BreakdownView } from '../../_components/breakdown-view';
import { readBreakdown, type BreakdownAddress } from '../../read-breakdown';

interface Props {
  readonly params: Promise<BreakdownAddress>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const found = await readBreakdown(await params);
  if (!found) return { title: 'No such number' };
  return { title: `Breakdown: ${NUTRIENTS[found.of.nutrient].label}, ${found.named.title}` };
}

export default async function BreakdownPage({ params }: Props) {
  const found = await readBreakdown(await params);
  if (!found) notFound();
  return <BreakdownView found={found} />;
}
