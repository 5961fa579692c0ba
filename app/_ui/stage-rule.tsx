import { STAGE_WORDS, type Stage } from '#lib/overview/stage';
import { stageMarks } from './geometry';

const STAGES = Object.keys(STAGE_WORDS) as readonly Stage[];

/** Where an episode stands: the word, and under it a rule with a tick for each stage, drawn up to this one. */
export function StageRule({ stage }: { readonly stage: Stage }) {
  const { width, height, ticks, at } = stageMarks(STAGES.length, STAGES.indexOf(stage));
  const middle = height / 2;
  return (
    <span className="block">
      <span className="font-semibold">{STAGE_WORDS[stage]}</span>
      <svg
        viewBox={`0 0 ${width} ${height}`}
        className="mt-1 block h-4 w-40 max-w-full"
        fill="none"
        stroke="currentColor"
        aria-hidden="true"
      >
        <path
          d={`M${ticks[0]} ${middle}H${ticks.at(-1)}`}
          className="stroke-edge"
          strokeWidth="1.25"
        />
        <path d={ticks.map((x) => `M${x} ${middle - 3}v6`).join('')} className="stroke-edge" />
        <path d={`M${ticks[0]} ${middle}H${at}`} strokeWidth="4.5" />
        <path d={`M${at} 0V${height}`} strokeWidth="2.5" />
      </svg>
    </span>
  );
}
