import { ButtonForm } from '../../../_forms/button-form';
import { printRuntime } from '#lib/units/print';
import type { Segment } from '#lib/episode/schema';
import { moveSegment, removeSegment, saveSegment } from '../actions';
import { eatenWords } from './eaten-words';
import { EditLink } from './edit-link';
import { OpenedHere } from './opened-here';
import { segmentTexts } from './row-texts';
import { SegmentForm } from './segment-form';
import { editHref, revOf, rowHref, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly segment: Segment;
}

/** The head of a segment: its name and length, the way up and down the running order, and its form. */
export function SegmentHead({ view, segment }: Props) {
  const episodeId = view.file.episode.id;
  const { segments } = view.file.episode;
  const values = { episodeId, segmentId: segment.id };
  const first = segments[0]?.id === segment.id;
  const last = segments.at(-1)?.id === segment.id;
  return (
    <header className="mb-5">
      <div className="flex flex-wrap items-baseline gap-x-5 gap-y-1">
        <h2 id={`title-${segment.id}`}>{segment.title}</h2>
        <p className="lettering text-soft">
          {segment.kind === 'recipe' ? 'dish' : 'talk'} · {printRuntime(segment.plannedS)}
          {segment.recipe && ` · ${eatenWords(segment)}`}
        </p>
        <div className="ml-auto flex flex-wrap items-center gap-x-5 print:hidden">
          {!first && (
            <ButtonForm
              action={moveSegment}
              values={{ ...values, to: 'up' }}
              label={`Move up: ${segment.title}`}
            >
              Move up
            </ButtonForm>
          )}
          {!last && (
            <ButtonForm
              action={moveSegment}
              values={{ ...values, to: 'down' }}
              label={`Move down: ${segment.title}`}
            >
              Move down
            </ButtonForm>
          )}
          <EditLink href={editHref(episodeId, segment.id)} what={segment.title} />
        </div>
      </div>
      {view.editing === segment.id && (
        <div className="mt-4 border-y border-line py-4">
          <OpenedHere rowId={`row-${segment.id}`} closeHref={rowHref(episodeId, segment.id)}>
            <SegmentForm
              id={`segment-${segment.id}`}
              action={saveSegment}
              hidden={{ ...values, rev: revOf(view, segment.id) }}
              kind={segment.kind}
              {...segmentTexts(segment)}
              kept={view.kept ?? null}
              submit="Save"
              cancelHref={rowHref(episodeId, segment.id)}
            />
            <div className="mt-4">
              <ButtonForm
                action={removeSegment}
                values={{ ...values, rev: revOf(view, segment.id) }}
                tone="hand"
                label={`Take out of the episode: ${segment.title}`}
              >
                Take out of the episode
              </ButtonForm>
            </div>
          </OpenedHere>
        </div>
      )}
    </header>
  );
}
