import type { ReactNode } from 'react';
import { ButtonForm } from '../../../../_forms/button-form';
import { ButtonLink } from '../../../../_ui/button';
import type { Segment, Shot, Step, StepLink } from '#lib/episode/schema';
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
import { Row } from './row';
import { ShotForm, type ShotText } from './shot-form';
import { StepForm } from './step-form';
import { emptyStep, ovenChoices, ROLE_CHOICES, stepText } from './step-texts';
import { editHref, newRow, revOf, rowHref, stepTitle, type DayPage } from './view';

interface Props {
  readonly page: DayPage;
  readonly segment: Segment;
}

/** A segment's steps, what ties them, and its shots, each with a form of its own on asking. */
export function SegmentSteps({ page, segment }: Props) {
  const filmed = page.day.segments.some(({ segmentId }) => segmentId === segment.id);
  const own = new Set(segment.steps.map(({ id }) => id));
  const links = page.file.episode.links.filter(({ toStepId }) => own.has(toStepId));
  const rows = [...segment.steps, ...links, ...segment.shots].map(({ id }) => id);
  const adding = (['step', 'link', 'shot'] as const).map((what) => newRow(what, segment.id));
  const here = [segment.id, ...rows, ...adding];
  const open = [page.editing, page.at].some((row) => row !== null && here.includes(row));
  return (
    <details
      id={`row-${segment.id}`}
      open={open || segment.steps.length === 0}
      className="mt-3 border-t-[1.5px] border-ink"
    >
      <summary className="min-h-14 content-center">
        <span className="font-slate text-head font-semibold">{segment.title}</span>{' '}
        <span className="text-soft">
          {segment.steps.length} steps, {segment.shots.length} shots
          {!filmed && ', not filmed on this day'}
        </span>
      </summary>
      <Part title="Steps" empty="No steps yet: a step is a thing to do or to wait for.">
        {segment.steps.map((step) => (
          <StepRow key={step.id} page={page} segment={segment} step={step} />
        ))}
        <NewStep page={page} segment={segment} />
      </Part>
      {segment.steps.length > 0 && (
        <Part title="What comes before what" empty="Nothing ties its steps yet.">
          {links.map((link) => (
            <LinkRow key={link.id} page={page} segment={segment} link={link} />
          ))}
          <NewLink page={page} segment={segment} />
        </Part>
      )}
      <Part title="Shots" empty="No shots yet: what is to be got on camera.">
        {segment.shots.map((shot) => (
          <ShotRow key={shot.id} page={page} segment={segment} shot={shot} />
        ))}
        <NewShot page={page} segment={segment} />
      </Part>
    </details>
  );
}

function Part({
  title,
  empty,
  children,
}: {
  readonly title: string;
  readonly empty: string;
  readonly children: readonly [readonly ReactNode[], ReactNode];
}) {
  const [rows, add] = children;
  return (
    <div className="mt-3 mb-6">
      <h3>{title}</h3>
      {rows.length === 0 ? <p className="mt-1 text-soft">{empty}</p> : <ul>{rows}</ul>}
      {add}
    </div>
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
  const words = [ROLE_WORDS[step.role], ...stepWords(step, kitchen.ovens, episode.region)];
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
    <Adding page={page} row={row} words="Add a step" segment={segment}>
      <StepForm
        id={row}
        action={addStep}
        hidden={{ episodeId: episode.id, segmentId: segment.id }}
        step={emptyStep(episode.region)}
        roles={ROLE_CHOICES}
        ovens={ovenChoices(kitchen.ovens)}
        submit="Add the step"
        cancelHref={rowHref(page, segment.id)}
      />
    </Adding>
  );
}

function linkText(link: StepLink): LinkText {
  const optional = (seconds: number | null) => (seconds === null ? '' : minutesTyped(seconds));
  return { ...link, minLag: optional(link.minLagS), maxLag: optional(link.maxLagS) };
}

function stepChoices(page: DayPage, first: readonly Segment[] = []) {
  const segments = [...new Set([...first, ...page.file.episode.segments])];
  return segments.flatMap(({ title, steps }) =>
    steps.map((step) => ({ value: step.id, words: `${step.title} (${title})` })),
  );
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
    <Adding page={page} row={row} words="Tie two steps" segment={segment}>
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
        cancelHref={rowHref(page, segment.id)}
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
    <Adding page={page} row={row} words="Add a shot" segment={segment}>
      <ShotForm
        id={row}
        action={addShot}
        hidden={{ episodeId: page.file.episode.id, segmentId: segment.id }}
        shot={{ title: '', stepId: segment.steps[0]?.id ?? '', framing: '', length: '' }}
        steps={ownSteps(segment)}
        submit="Add the shot"
        cancelHref={rowHref(page, segment.id)}
      />
    </Adding>
  );
}

function Adding({
  page,
  row,
  words,
  segment,
  children,
}: Props & { readonly row: string; readonly words: string; readonly children: ReactNode }) {
  return (
    <div id={`row-${row}`} className="mt-2">
      {page.editing === row ? (
        <div className="border-[1.5px] border-ink bg-raised p-4">
          <h4 className="mb-3 font-slate text-head font-semibold">
            {words}: {segment.title}
          </h4>
          {children}
        </div>
      ) : (
        <ButtonLink href={editHref(page, row)}>
          {words}
          <span className="unseen"> to {segment.title}</span>
        </ButtonLink>
      )}
    </div>
  );
}
