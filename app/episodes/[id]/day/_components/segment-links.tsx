import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import type { StepLink } from '#lib/episode/step-schema';
import { linkWords } from '#lib/shoot/step-words';
import { minutesTyped } from '#lib/units/read-typed';
import { addLink, removeLink, saveLink } from '../actions';
import { LinkForm, type LinkText } from './link-form';
import { Adding, Part } from './part';
import { Row } from './row';
import {
  linkRows,
  linksInto,
  newRow,
  revOf,
  rowHref,
  standsOpen,
  stepChoices,
  stepTitle,
  type DayPage,
} from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** What ties the steps of a segment to those before them. */
export function SegmentLinks({ page, segment }: Props) {
  return (
    <Part
      title="What comes before what"
      empty="Nothing ties its steps yet."
      open={standsOpen(page, linkRows(page, segment))}
    >
      {linksInto(page, segment).map((link) => (
        <LinkRow key={link.id} page={page} segment={segment} link={link} />
      ))}
      <NewLink page={page} segment={segment} />
    </Part>
  );
}

function linkText(link: StepLink): LinkText {
  const optional = (seconds: number | null) => (seconds === null ? '' : minutesTyped(seconds));
  return { ...link, minLag: optional(link.minLagS), maxLag: optional(link.maxLagS) };
}

function LinkRow({ page, segment, link }: Props & { readonly link: StepLink }) {
  const { episode } = page.file;
  const ids = {
    episodeId: episode.id,
    segmentId: segment.id,
    linkId: link.id,
    rev: revOf(page, link.id),
  };
  const title = linkWords(link, (stepId) => stepTitle(episode.segments, stepId));
  return (
    <Row page={page} id={link.id} title={title} plain>
      <LinkForm
        id={`link-${link.id}`}
        action={saveLink}
        hidden={ids}
        link={linkText(link)}
        steps={stepChoices(page)}
        submit="Save"
        cancelHref={rowHref(page, link.id)}
      />
      <ButtonForm action={removeLink} values={ids} tone="hand" size="usual">
        Untie the two
      </ButtonForm>
    </Row>
  );
}

function NewLink({ page, segment }: Props) {
  const row = newRow('link', segment.id);
  const [from, to] = segment.steps.slice(-2);
  return (
    <Adding page={page} row={row} words="Tie two steps" to={segment.title}>
      <LinkForm
        id={row}
        action={addLink}
        hidden={{ episodeId: page.file.episode.id }}
        link={{
          fromStepId: from?.id ?? '',
          fromAnchor: 'end',
          toStepId: to?.id ?? '',
          toAnchor: 'start',
          minLag: '0',
          maxLag: '',
          reason: '',
        }}
        steps={stepChoices(page, [segment])}
        submit="Tie them"
        cancelHref={rowHref(page, row)}
      />
    </Adding>
  );
}
