import Link from 'next/link';
import { ButtonForm } from '../../../_forms/button-form';
import { Disclosure } from '../../../_ui/disclosure';
import { bindText } from '#lib/figures/bind-text';
import type { Segment, TalkingPoint } from '#lib/episode/schema';
import { addPoint, removePoint, savePoint } from '../actions';
import { breakdownHref } from '../breakdown/href';
import { EditLink } from './edit-link';
import { OpenedHere } from './opened-here';
import { PointForm } from './point-form';
import { editHref, revOf, rowHref, type EpisodeView } from './view';

interface Props {
  readonly view: EpisodeView;
  readonly segment: Segment;
}

/** What is to be said in a segment, with its numbers filled in as they are published. */
export function TalkingPoints({ view, segment }: Props) {
  const episodeId = view.file.episode.id;
  return (
    <section aria-label={`To say: ${segment.title}`}>
      <h3>To say</h3>
      <ul className="mt-2">
        {segment.talkingPoints.map((point) => (
          <li key={point.id} id={`row-${point.id}`} className="border-b border-line py-2.5">
            {view.editing === point.id ? (
              <EditPoint view={view} point={point} />
            ) : (
              <Said view={view} segment={segment} point={point} />
            )}
          </li>
        ))}
      </ul>
      {segment.talkingPoints.length > 0 && (
        <p className="print:hidden">
          <Link
            className="link inline-flex min-h-11 items-center"
            href={`/episodes/${episodeId}/reading`}
            prefetch={false}
          >
            Read to camera
          </Link>
        </p>
      )}
      <Disclosure words="Add a sentence">
        <PointForm
          id={`new-point-${segment.id}`}
          action={addPoint}
          hidden={{ episodeId, segmentId: segment.id }}
          text=""
          submit="Add the sentence"
        />
      </Disclosure>
    </section>
  );
}

function EditPoint({ view, point }: Pick<Props, 'view'> & { readonly point: TalkingPoint }) {
  const episodeId = view.file.episode.id;
  const values = { episodeId, pointId: point.id, rev: revOf(view, point.id) };
  return (
    <OpenedHere rowId={`row-${point.id}`} closeHref={rowHref(episodeId, point.id)}>
      <PointForm
        id={`point-${point.id}`}
        action={savePoint}
        hidden={values}
        text={point.text}
        submit="Save"
        cancelHref={rowHref(episodeId, point.id)}
        kept={view.kept ?? null}
      />
      <div className="mt-3">
        <ButtonForm
          action={removePoint}
          values={values}
          tone="hand"
          label={`Take out: ${point.text}`}
        >
          Take the sentence out
        </ButtonForm>
      </div>
    </OpenedHere>
  );
}

function Said({ view, segment, point }: Props & { readonly point: TalkingPoint }) {
  const bound = bindText(point.text, segment, view.figures, view.numbers);
  return (
    <div className="flex items-baseline justify-between gap-5">
      <div>
        <p>
          {bound.parts.map(({ text, of }, at) =>
            of === null ? (
              text
            ) : (
              <Link
                // A sentence may say the same number twice.
                key={at}
                className="link"
                href={breakdownHref(view.file.episode.id, of.scope, of.nutrient)}
                prefetch={false}
              >
                {text}
              </Link>
            ),
          )}
        </p>
        {bound.gaps.map((gap) => (
          <p key={gap} className="hatch mt-1 px-2 py-1 text-fine">
            {gap}
          </p>
        ))}
      </div>
      <EditLink href={editHref(view.file.episode.id, point.id)} what={bound.text} />
    </div>
  );
}
