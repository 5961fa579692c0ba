/**
 * Words on one line as they come out of any field unchanged: composed (NFC), single spaces, nothing that is not seen.
 * Of what is not seen only what holds one picture together stays, as the joiner in a person cooking.
 * @example pastedLine('a\u200b\tb ') // 'a b'
 */
export function pastedLine(words: string): string {
  return words
    .replace(SPACES, ' ')
    .replace(UNSEEN, (_, picture?: string) => picture ?? '')
    .normalize('NFC')
    .replace(/ {2,}/g, ' ')
    .trim();
}

/** A piece of a line as `pastedLine` has it, but with what parts it from its neighbours. */
export function pastedSpan(span: string): string {
  const text = pastedLine(span);
  if (text === '') return span === '' ? '' : ' ';
  return `${/^\s/.test(span) ? ' ' : ''}${text}${/\s$/.test(span) ? ' ' : ''}`;
}

/** Words of several lines, each as `pastedLine` has it; lines with nothing on them part paragraphs. */
export function pastedParagraphs(words: string): readonly (readonly string[])[] {
  const paragraphs: string[][] = [[]];
  for (const line of words.split(LINE_ENDS).map(pastedLine)) {
    if (line === '') paragraphs.push([]);
    else paragraphs.at(-1)?.push(line);
  }
  return paragraphs.filter((lines) => lines.length > 0);
}

/** All that a text may end a line with (Unicode Standard Annex 14, BK, CR, LF and NL). */
const LINE_ENDS = /\r\n|[\n\v\f\r\u0085\u2028\u2029]/;
const SPACES = /[\p{Zs}\t\n\v\f\r\u0085\u2028\u2029]/gu;

/** A picture of several code points (Unicode Technical Standard 51), or something that nobody sees or can send. */
const UNSEEN = new RegExp(
  '(\\p{Extended_Pictographic}(?:\\uFE0F|\\p{Emoji_Modifier})?' +
    '(?:\\u200D\\p{Extended_Pictographic}(?:\\uFE0F|\\p{Emoji_Modifier})?)*|[0-9#*]\\uFE0F\\u20E3)' +
    '|[\\p{Default_Ignorable_Code_Point}\\p{Cc}\\p{Cf}\\p{Cs}\\p{Noncharacter_Code_Point}]',
  'gu',
);
