import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '../../../../_ui/button';
import { SlateHead } from '../../../../_ui/slate-head';
import { DraftForm } from './_components/draft-form';
import { LeftList } from './_components/left-list';
import { readDraftPage } from './read-draft-page';

export const metadata: Metadata = { title: 'Draft from the texts' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function DraftPage({ params }: Props) {
  const { id } = await params;
  const view = await readDraftPage(id);
  if (!view) notFound();
  const { title, count, left, hasTexts, made } = view;
  return (
    <>
      <SlateHead
        kind="Draft from the texts"
        title={title}
        cells={[
          { name: 'Proposed', value: count },
          { name: 'Left out', value: left.length },
        ]}
      />
      <p className="mb-6">
        <ButtonLink href={`/episodes/${id}/edit`} size="small">
          Back to the edit
        </ButtonLink>{' '}
        <ButtonLink href={`/episodes/${id}/edit/recipe`} size="small">
          Recipe from a page
        </ButtonLink>
      </p>
      {count > 0 ? (
        <DraftForm view={view} />
      ) : (
        <p className="max-w-[60ch] text-lead">
          {hasTexts
            ? `${made === null ? '' : `The episode has ${made}. `}Its texts propose nothing more.`
            : 'This episode has no texts yet: bring its captions, its description or its title in on the edit’s page.'}
        </p>
      )}
      <LeftList left={left} />
    </>
  );
}
