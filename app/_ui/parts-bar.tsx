import type { ReactNode } from 'react';
import { percent } from '#lib/figures/breakdown-advice';
import type { BarPart, BarTarget, PictureBar } from '#lib/figures/breakdown-picture';
import { LIMIT_WORDS, SHORT_VERDICTS } from '#lib/figures/limit-words';
import { NUTRIENTS } from '#lib/foods/nutrients';
import { LACKS, partsBar, type PartsBarDrawing } from './bar-geometry';
import { PartsBarMarks } from './parts-bar-marks';

interface Props {
  readonly bar: PictureBar;
  /** The number that the bar is of, over it. */
  readonly children: ReactNode;
  /** What stands beside a part's name instead of its share of the sum. */
  readonly note?: ((part: BarPart) => ReactNode) | undefined;
}

/**
 * Where a number comes from: a bar of its parts, each with its name beside it, with the range as on a scale and
 * the targets it is held against. Parts differ by texture and words, never by colour.
 */
export function PartsBar({ bar, children, note }: Props) {
  const drawing = partsBar(bar);
  const words = labelWords(bar, note);
  return (
    <figure className="min-w-0">
      <figcaption>{children}</figcaption>
      <div className="relative mt-2" style={{ height: rem(drawing.height) }}>
        <PartsBarMarks drawing={drawing} />
        <ul>
          {drawing.labels.map(({ key, to }) => (
            <li
              key={key}
              className="absolute right-0 line-clamp-2 max-w-64 -translate-y-1/2 text-fine print:text-[9pt] print:leading-tight"
              style={{ top: rem(to), left: rem(drawing.width) }}
            >
              {words.get(key)}
            </li>
          ))}
        </ul>
      </div>
    </figure>
  );
}

const rem = (units: PartsBarDrawing['width']) => `${units / 16}rem`;

function labelWords(bar: PictureBar, note: Props['note']): ReadonlyMap<string, ReactNode> {
  return new Map<string, ReactNode>([
    [LACKS, <Lacks key={LACKS} bar={bar} />],
    ...bar.targets.map((target): [string, ReactNode] => [
      target.id,
      targetWords(target, NUTRIENTS[bar.nutrient].unit),
    ]),
    ...bar.parts.map((part): [string, ReactNode] => [
      part.key,
      <span key={part.key} title={part.name}>
        <b>{note ? note(part) : percent(part.share)}</b> {part.name}
      </span>,
    ]),
  ]);
}

function Lacks({ bar: { parts, lacks } }: { readonly bar: PictureBar }) {
  return (
    <span title={lacks}>
      <b>{parts.length > 0 ? 'and more' : 'open'}</b>: {lacks}
    </span>
  );
}

function targetWords({ relation, amount, verdict }: BarTarget, unit: string): ReactNode {
  return (
    <>
      target {LIMIT_WORDS[relation]}{' '}
      <span className="whitespace-nowrap">
        {amount} {unit}
      </span>
      : <b>{SHORT_VERDICTS[verdict]}</b>
    </>
  );
}
