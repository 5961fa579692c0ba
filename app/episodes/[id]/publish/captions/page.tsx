import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ButtonLink } from '../../../../_ui/button';
import { toldLock } from '#lib/publish/lock-words';
import { EmptyState } from '../../../../_ui/empty-state';
import { SlateHead } from '../../../../_ui/slate-head';
import { LockLine } from '../_components/lock-line';
import { CaptionsForm } from './_components/captions-form';
import { readCaptions } from './read-captions';

export const metadata: Metadata = { title: 'Captions with corrections' };

interface Props {
  readonly params: Promise<{ readonly id: string }>;
}

export default async function CaptionsPage({ params }: Props) {
  const { id } = await params;
  const read = await readCaptions(id);
  if (!read) notFound();
  const { source, captions } = read;
  const count = captions.flatMap(({ corrections }) => corrections).length;
  return (
    <>
      <SlateHead
        kind="Captions with corrections"
        title={source.file.episode.title}
        cells={[
          { name: 'Captions', value: captions.length },
          { name: 'Off', value: count },
        ]}
      />
      <p className="mb-6 print:hidden">
        <ButtonLink href={`/episodes/${id}/publish`} size="small">
          Back to Publish
        </ButtonLink>
      </p>
      <LockLine episodeId={id} told={toldLock(source)} />
      {captions.length === 0 ? (
        <EmptyState
          title="No captions with times yet"
          action={
            <ButtonLink href={`/episodes/${id}/edit`} tone="go">
              To the edit
            </ButtonLink>
          }
        >
          Captions are brought in on the edit’s page, as WebVTT or SubRip; a transcript has no times
          to keep.
        </EmptyState>
      ) : (
        <div className="grid max-w-4xl gap-10">
          {captions.map((each) => (
            <CaptionsForm
              key={each.text.id}
              episodeId={id}
              textId={each.text.id}
              name={each.text.name}
              format={each.format}
              version={each.version}
              corrections={each.corrections}
            />
          ))}
        </div>
      )}
    </>
  );
}
