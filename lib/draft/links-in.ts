import { cut } from './clean-title';
import { fromLine, leftOut } from './described';
import type { DraftLink, LeftOut } from './draft';
import type { Row } from './text-rows';

const ADDRESS = /\bhttps?:\/\/[^\s<>"'“”‘’|]+/gi;
const LONGEST_URL = 400;
const LONGEST_LABEL = 80;

/**
 * The addresses of a line, each with the words before it, or with its host where there are none.
 * @param above words of the line above that name a bare address
 */
export function linksIn(
  row: Row,
  above: string,
): { readonly links: readonly DraftLink[]; readonly left: readonly LeftOut[] } {
  const links: DraftLink[] = [];
  const left: LeftOut[] = [];
  const from = fromLine(row.line, row.text);
  let at = 0;
  for (const match of row.body.matchAll(ADDRESS)) {
    const address = match[0].replace(/[.,;:!?)\]]+$/, '');
    const host = hostOf(address);
    const before = labelOf(row.body.slice(at, match.index));
    at = match.index + match[0].length;
    if (host === null || address.length > LONGEST_URL) left.push(leftOut('link', from));
    else
      links.push({
        label: cut(before || labelOf(above) || host, LONGEST_LABEL),
        url: address,
        from,
      });
  }
  if (links.length === 0 && left.length === 0) left.push(leftOut('link', from));
  return { links, left };
}

function labelOf(words: string): string {
  return words
    .replace(/[*_#`]+/g, '')
    .replace(/^[\s\-–—|:,.()[\]•>→➡=]+|[\s\-–—|:,()[\]•>→➡=]+$/gu, '')
    .replace(/\s+/g, ' ');
}

function hostOf(address: string): string | null {
  try {
    return new URL(address).host || null;
  } catch {
    return null;
  }
}
