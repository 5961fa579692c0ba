import type { EveningBefore } from '#lib/overview/evening-before';
import { eveningClock, pinnedWords, tieWords, tooEarlyWords } from '#lib/overview/evening-words';
import { minutesText } from '#lib/shoot/day-words';
import type { EveningStep } from '#lib/shoot/evening';

const EDGES = {
  hand: 'border-l-[6px] border-l-hand pl-3',
  self: 'border-l-[6px] border-double border-l-self pl-3',
} as const;

/** The steps of the evening in order of the latest time at which each can be begun. */
export function EveningSteps({ evening }: { readonly evening: EveningBefore }) {
  if (evening.steps.length === 0) {
    return (
      <p className="text-soft">
        No step is done the evening before. Tick “done the evening before” at a step of the filming
        day, to soak, thaw, marinate or chill, and it stands here with its time.
      </p>
    );
  }
  return (
    <ol className="border-t border-line">
      {evening.steps.map((step) => (
        <StepItem key={step.step.id} step={step} date={evening.date} />
      ))}
    </ol>
  );
}

function StepItem({ step: of, date }: { readonly step: EveningStep; readonly date: string }) {
  const { step, segmentTitle, startMin, endMin } = of;
  const facts = [
    segmentTitle,
    minutesText(endMin - startMin),
    step.hands ? 'hands' : 'by itself',
    ...of.ties.map(tieWords),
    ...of.shots.map(({ title }) => `shot: ${title}`),
    ...(step.note === '' ? [] : [step.note]),
  ];
  const early = tooEarlyWords(of, date);
  const pinned = pinnedWords(of);
  return (
    <li className="grid grid-cols-[4rem_minmax(0,1fr)] gap-3 md:grid-cols-[6.5rem_minmax(0,1fr)] border-b border-line py-2 print:py-0.5">
      <span className="text-head font-semibold tabular-nums print:text-[10pt]">
        {eveningClock(startMin, date)}
      </span>
      <div className={step.hands ? EDGES.hand : EDGES.self}>
        <p className="font-semibold">{step.title}</p>
        <p className="text-fine text-soft">{facts.join(' · ')}</p>
        {pinned !== null && <p className="text-fine font-semibold">{pinned}</p>}
        {early !== null && <p className="text-fine font-semibold text-hand">{early}</p>}
      </div>
    </li>
  );
}
