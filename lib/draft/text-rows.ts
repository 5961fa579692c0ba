import { bulletLength, withoutMarkup, withoutUnseen } from '#lib/episode/read-ingredient-clean';
import { plainWidth } from '#lib/episode/read-ingredient-tokens';
import { linesOf } from '#lib/cut/text-lines';
import { fold } from '#lib/units/plain-words';

/** A line of a description as it is read. */
export interface Row {
  /** Line of what was pasted, counted from 1. */
  readonly line: number;
  /** Its words without markup, with marks of direction where it has any. */
  readonly raw: string;
  /** As `raw`, without what nobody sees. */
  readonly text: string;
  /** Without bullet, numbering and pictures in front. */
  readonly body: string;
  /** The body as an ingredient is read from it: with marks of direction, where it has any. */
  readonly ingredient: string;
  /** `body` in lower case without accents, with plain apostrophes, without marks of emphasis. */
  readonly folded: string;
  /** What stands before the body: a bullet, a number, a picture, marks of a heading; empty where nothing does. */
  readonly lead: 'bullet' | 'number' | 'picture' | '';
}

/** A picture, with what varies and joins it; keycap digits among them. */
const PICTURES =
  /^(?:(?:\d\ufe0f?\u20e3|[\p{Extended_Pictographic}\p{Emoji_Modifier}\p{Regional_Indicator}\u200d\ufe0f\u20e3])\s*)+/u;

/**
 * The lines of a description, one for each item that a page's markup sets on a line of its own, with the line of the
 * paste that it came from. Blank lines are rows without words.
 */
export function textRows(description: string): Row[] {
  return linesOf(description.replace(/^\uFEFF/, '')).flatMap((line, index) => {
    const marked = line.replace(/<h[1-6](?:\s[^<>]*)?>/gi, (tag) => `${tag}## `);
    const parts = marked.includes('<') || marked.includes('&') ? unmarked(marked) : [line];
    return parts.map((raw) => row(raw, index + 1));
  });
}

function unmarked(line: string): string[] {
  const parts = withoutMarkup(line).text.split(/[\n\u2028\u2029]/);
  const said = parts.filter((part) => part.trim() !== '' && part.trim() !== '##');
  return said.length > 0 ? said : [''];
}

function row(marked: string, line: number): Row {
  const raw = marked.replace(/[\v\f\u0085\u2028\u2029]/g, ' ').trim();
  const text = plainWidth(withoutUnseen(raw).text).trim();
  const pictured = PICTURES.exec(text)?.[0].length ?? 0;
  const behind = text.slice(pictured);
  const bullet = /^#{1,6}\s/.test(behind) ? 0 : bulletLength(behind);
  const again = PICTURES.exec(behind.slice(bullet))?.[0].length ?? 0;
  const body = behind.slice(bullet + again).trim();
  const sign = behind.slice(0, bullet);
  const lead = /\d/.test(sign) ? 'number' : sign !== '' ? 'bullet' : pictured > 0 ? 'picture' : '';
  const ingredient = /[\u202d\u202e]/.test(raw) ? raw : body;
  return { line, raw, text, body, ingredient, folded: foldRow(body), lead };
}

/** The body of a row without marks of a heading and of emphasis. */
export const bareBody = ({ body }: Pick<Row, 'body'>): string =>
  body.replace(/^#+\s+|[*_]{2}/g, '');

/** As `Row.folded`. */
export function foldRow(text: string): string {
  return fold(text.replace(/[*_#`]+/g, ' ').replace(/[’‘]/g, "'"))
    .replace(/\s+/g, ' ')
    .trim();
}
