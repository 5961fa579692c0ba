import type { Draft } from '#lib/draft/draft';
import { printRuntime } from '#lib/units/print';

/** A draft as the description that says it: what is read from it again must be the same. */
export function printDraft({ hook, segments, links, disclosure }: Draft): string {
  const chapters = segments.filter(({ inMs }) => inMs !== null);
  const timed = chapters.length >= 2 && segments.every(({ inMs }) => inMs !== null);
  return [
    ...(hook ? [hook.text, ''] : []),
    ...(timed
      ? segments.map(
          ({ inMs, title }) => `${printRuntime(Math.floor((inMs ?? 0) / 1000))} ${title}`,
        )
      : []),
    '',
    ...segments.flatMap(({ kind, title, portions, lines, method }) =>
      kind === 'talk' || lines.length + method.length === 0
        ? []
        : [
            `## ${title}`,
            ...(portions ? [`Serves ${portions.count}`] : []),
            'Ingredients:',
            ...lines.map(({ text }) => `- ${text}`),
            ...(method.length > 0
              ? ['Method:', ...method.map(({ text }, at) => `${at + 1}. ${text}`)]
              : []),
            '',
          ],
    ),
    ...links.map(({ label, url }) => `${label}: ${url}`),
    ...(disclosure ? ['', disclosure.text] : []),
  ].join('\n');
}
