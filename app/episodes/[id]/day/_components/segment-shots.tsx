import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import type { Shot } from '#lib/episode/step-schema';
import { printRuntime } from '#lib/units/print';
import { addShot, removeShot, saveShot } from '../actions';
import { Adding, Part } from './part';
import { Row } from './row';
import { ShotForm, type ShotText } from './shot-form';
import { newRow, revOf, rowHref, shotRows, standsOpen, stepTitle, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** What of a segment is to be got on camera. */
export function SegmentShots({ page, segment }: Props) {
  return (
    <Part
      title="Shots"
      empty="No shots yet: what is to be got on camera."
      open={standsOpen(page, shotRows(segment))}
    >
      {segment.shots.map((shot) => (
        <ShotRow key={shot.id} page={page} segment={segment} shot={shot} />
      ))}
      <NewShot page={page} segment={segment} />
    </Part>
  );
}

function shotText(shot: Shot): ShotText {
  const length = shot.lengthS === 0 ? '' : printRuntime(shot.lengthS);
  return { title: shot.title, stepId: shot.stepId ?? '', framing: shot.framing, length };
}

const ownSteps = (segment: Segment) => [
  { value: '', words: 'no step: it stands alone' },
  ...segment.steps.map((step) => ({ value: step.id, words: step.title })),
];

function ShotRow({ page, segment, shot }: Props & { readonly shot: Shot }) {
  const ids = {
    episodeId: page.file.episode.id,
    segmentId: segment.id,
    shotId: shot.id,
    rev: revOf(page, shot.id),
  };
  const during = shot.stepId && `during ${stepTitle(page.file.episode.segments, shot.stepId)}`;
  const length = shot.lengthS > 0 && printRuntime(shot.lengthS);
  return (
    <Row
      page={page}
      id={shot.id}
      title={shot.title}
      note={[shot.framing, length, during].filter(Boolean).join(' · ')}
      plain
    >
      <ShotForm
        id={`shot-${shot.id}`}
        action={saveShot}
        hidden={ids}
        shot={shotText(shot)}
        steps={ownSteps(segment)}
        submit="Save the shot"
        cancelHref={rowHref(page, shot.id)}
      />
      <ButtonForm action={removeShot} values={ids} tone="hand" size="usual">
        Take the shot out
      </ButtonForm>
    </Row>
  );
}

function NewShot({ page, segment }: Props) {
  const row = newRow('shot', segment.id);
  return (
    <Adding page={page} row={row} words="Add a shot" to={segment.title}>
      <ShotForm
        id={row}
        action={addShot}
        hidden={{ episodeId: page.file.episode.id, segmentId: segment.id }}
        shot={{ title: '', stepId: segment.steps[0]?.id ?? '', framing: '', length: '' }}
        steps={ownSteps(segment)}
        submit="Add the shot"
        cancelHref={rowHref(page, row)}
      />
    </Adding>
  );
}
