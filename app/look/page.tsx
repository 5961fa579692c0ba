import type { Metadata } from 'next';
import { LookView } from './_components/look-view';

export const metadata: Metadata = { title: 'Look' };

export default function LookPage() {
  return <LookView />;
}
