import type { Draft } from '#lib/draft/draft';
import { printRuntime } from '#lib/units/print';

const clock = (ms: number | null) => (ms === null ? '-' : printRuntime(Math.floor(ms / 1000)));

/** A draft in few lines, so that a table of them can be reviewed: what came out of what, in order. */
export function sketch(draft: Draft): string[] {
  return [
    ...(draft.title ? [`title ${draft.title.text}`] : []),
    ...(draft.hook ? [`hook ${draft.hook.text.replaceAll('\n', ' / ')}`] : []),
    ...draft.segments.flatMap((segment) => [
      `${clock(segment.inMs)} ${segment.kind === 'talk' ? 'talk' : 'dish'} ${segment.title}` +
        (segment.portions ? ` ×${segment.portions.count}` : ''),
      ...segment.lines.map(({ text }) => `  ${text}`),
      ...segment.method.map(({ text }) => `  > ${text}`),
    ]),
    ...draft.links.map(({ label, url }) => `link ${label} = ${url}`),
    ...(draft.disclosure ? [`disclosure ${draft.disclosure.text}`] : []),
    ...draft.left.map(({ why, from }) => `left ${from.text} ${from.line} ${why}`),
  ];
}
