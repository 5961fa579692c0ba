import { ButtonForm } from '../../../../_forms/button-form';
import type { Segment } from '#lib/episode/schema';
import type { Shot, Step, StepLink } from '#lib/episode/step-schema';
import { linkWords, ROLE_WORDS, stepWords } from '#lib/shoot/step-words';
import { minutesTyped } from '#lib/units/read-typed';
import { printRuntime } from '#lib/units/print';
import {
  addLink,
  addShot,
  addStep,
  removeLink,
  removeShot,
  removeStep,
  saveLink,
  saveShot,
  saveStep,
} from '../actions';
import { LinkForm, type LinkText } from './link-form';
import { MethodForm } from './method-form';
import { Adding, Part } from './part';
import { Row } from './row';
import { SegmentLots } from './segment-lots';
import { SegmentOnDay } from './segment-on-day';
import { SegmentPins } from './segment-pins';
import { ShotForm, type ShotText } from './shot-form';
import { StepForm } from './step-form';
import { emptyStep, ovenChoices, ROLE_CHOICES, stepAsks, stepText } from './step-texts';
import {
  daysWords,
  lotRows,
  newRow,
  onDayRow,
  pinsOf,
  revOf,
  rowHref,
  standsOpen,
  stepChoices,
} from './view';
import { UsualShots } from './usual-shots';
import { stepTitle, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** A segment's steps, what ties them to each other and to the clock, cold food and shots, each with a form of its own on asking. */
export function SegmentSteps({ page, segment }: Props) {
  const filmed = page.day.segments.some(({ segmentId }) => segmentId === segment.id);
  const own = new Set(segment.steps.map(({ id }) => id));
  const links = page.file.episode.links.filter(({ toStepId }) => own.has(toStepId));
  const tied = [newRow('link', segment.id), ...links.map(({ id }) => id)];
  const shown = [newRow('shot', segment.id), ...segment.shots.map(({ id }) => id)];
  const rows = [
    segment.id,
    onDayRow(segment.id),
    newRow('step', segment.id),
    newRow('method', segment.id),
    ...own,
    ...tied,
    ...shown,
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
      {segment.steps.length > 0 && (
        <Part
          title="What comes before what"
          empty="Nothing ties its steps yet."
          open={standsOpen(page, tied)}
        >
          {links.map((link) => (
            <LinkRow key={link.id} page={page} segment={segment} link={link} />
          ))}
          <NewLink page={page} segment={segment} />
        </Part>
      )}
      {segment.steps.length > 0 && <SegmentPins page={page} segment={segment} />}
      {(segment.steps.length > 0 || segment.perishables.length > 0) && (
        <SegmentLots page={page} segment={segment} />
      )}
      <UsualShots page={page} segment={segment} />
      <Part
        title="Shots"
        empty="No shots yet: what is to be got on camera."
        open={standsOpen(page, shown)}
      >
        {segment.shots.map((shot) => (
          <ShotRow key={shot.id} page={page} segment={segment} shot={shot} />
        ))}
        <NewShot page={page} segment={segment} />
      </Part>
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
