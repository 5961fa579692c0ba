import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import type { Step } from '#lib/episode/step-schema';
import { ROLE_WORDS, stepWords } from '#lib/shoot/step-words';
import { addStep, removeStep, saveStep } from '../actions';
import { MethodForm } from './method-form';
import { Adding, Part } from './part';
import { Row } from './row';
import { SegmentLinks } from './segment-links';
import { SegmentLots } from './segment-lots';
import { SegmentOnDay } from './segment-on-day';
import { SegmentPins } from './segment-pins';
import { SegmentShots } from './segment-shots';
import { StepForm } from './step-form';
import { emptyStep, ovenChoices, ROLE_CHOICES, stepAsks, stepText } from './step-texts';
import {
  daysWords,
  linkRows,
  lotRows,
  newRow,
  onDayRow,
  pinsOf,
  revOf,
  rowHref,
  shotRows,
  standsOpen,
  type DayPage,
} from './view';
import { UsualShots } from './usual-shots';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** A segment's steps, what ties them to each other and to the clock, cold food and shots, each with a form of its own on asking. */
export function SegmentSteps({ page, segment }: Props) {
  const filmed = page.day.segments.some(({ segmentId }) => segmentId === segment.id);
  const rows = [
    segment.id,
    onDayRow(segment.id),
    newRow('step', segment.id),
    newRow('method', segment.id),
    ...segment.steps.map(({ id }) => id),
    ...linkRows(page, segment),
    ...shotRows(segment),
    newRow('pin', segment.id),
    ...pinsOf(page, segment).map(({ id }) => id),
    newRow('lot', segment.id),
    ...lotRows(page, segment),
  ];
  return (
    <details
      id={`row-${segment.id}`}
      open={standsOpen(page, rows) || segment.steps.length === 0}
      className="mt-3 border-t-[1.5px] border-ink"
    >
      <summary className="min-h-14 content-center">
        <span className="font-slate text-head font-semibold">{segment.title}</span>{' '}
        <span className="text-soft">
          {segment.steps.length} steps, {segment.shots.length} shots
          {daysWords(page, segment.id) ?? (filmed ? '' : ', not filmed on this day')}
        </span>
      </summary>
      <SegmentOnDay page={page} segment={segment} />
      <Part title="Steps" empty="No steps yet: a step is a thing to do or to wait for.">
        {segment.steps.map((step) => (
          <StepRow key={step.id} page={page} segment={segment} step={step} />
        ))}
        <>
          <NewStep page={page} segment={segment} />
          {segment.recipe && (
            <NewMethod page={page} segment={segment} method={segment.recipe.method} />
          )}
        </>
      </Part>
      {segment.steps.length > 0 && <SegmentLinks page={page} segment={segment} />}
      {segment.steps.length > 0 && <SegmentPins page={page} segment={segment} />}
      {(segment.steps.length > 0 || segment.perishables.length > 0) && (
        <SegmentLots page={page} segment={segment} />
      )}
      <UsualShots page={page} segment={segment} />
      <SegmentShots page={page} segment={segment} />
    </details>
  );
}

function StepRow({ page, segment, step }: Props & { readonly step: Step }) {
  const { episode, kitchen } = page.file;
  const ids = {
    episodeId: episode.id,
    segmentId: segment.id,
    stepId: step.id,
    rev: revOf(page, step.id),
  };
  const words = [ROLE_WORDS[step.role], ...stepWords(step, kitchen, episode.region)];
  return (
    <Row
      page={page}
      id={step.id}
      title={step.title}
      note={[words.join(' · '), step.note].filter(Boolean).join(' – ')}
      edge={step.hands ? 'hand' : 'self'}
    >
      <StepForm
        id={`step-${step.id}`}
        action={saveStep}
        hidden={ids}
        step={stepText(step, episode.region)}
        roles={ROLE_CHOICES}
        ovens={ovenChoices(kitchen.ovens)}
        asks={stepAsks(kitchen, step)}
        submit="Save the step"
        cancelHref={rowHref(page, step.id)}
      />
      <ButtonForm action={removeStep} values={ids} tone="hand" size="usual">
        Take the step out, with what ties it
      </ButtonForm>
    </Row>
  );
}

function NewStep({ page, segment }: Props) {
  const { episode, kitchen } = page.file;
  const row = newRow('step', segment.id);
  return (
    <Adding page={page} row={row} words="Add a step" to={segment.title}>
      <StepForm
        id={row}
        action={addStep}
        hidden={{ episodeId: episode.id, segmentId: segment.id }}
        step={emptyStep(episode.region)}
        roles={ROLE_CHOICES}
        ovens={ovenChoices(kitchen.ovens)}
        asks={stepAsks(kitchen)}
        submit="Add the step"
        cancelHref={rowHref(page, row)}
      />
    </Adding>
  );
}

function NewMethod({ page, segment, method }: Props & { readonly method: string }) {
  const row = newRow('method', segment.id);
  return (
    <Adding page={page} row={row} words="Add steps from the method" to={segment.title}>
      <MethodForm
        id={row}
        hidden={{ episodeId: page.file.episode.id, segmentId: segment.id }}
        method={method}
        has={segment.steps.length}
        cancelHref={rowHref(page, row)}
      />
    </Adding>
  );
}
