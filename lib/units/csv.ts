const NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Text that begins, after blanks, with `=`, `+`, `-` or `@` (or their full-width forms), a tab or a carriage
 * return is taken for a formula by spreadsheets: an apostrophe is put before it, which they show as text.
 * A plain number is left as it is.
 * @example plainText('=1+1') // "'=1+1"
 */
export function plainText(text: string): string {
  return !NUMBER.test(text) && /^(\s*[=+\-@＝＋－＠]|[\t\r\n])/.test(text) ? `'${text}` : text;
}

/**
 * A table for other programs: RFC 4180, a head, CRLF after every record, a field in quotes where it holds a
 * comma, a quote or a line break, quotes doubled. Text that a spreadsheet would take for a formula is made
 * plain, see `plainText`.
 * @example csvText(['what', 'minutes'], [['Bake, again', '14']]) // 'what,minutes\r\n"Bake, again",14\r\n'
 */
export function csvText(head: readonly string[], records: readonly (readonly string[])[]): string {
  return [head, ...records].map((cells) => `${cells.map(field).join(',')}\r\n`).join('');
}

function field(text: string): string {
  const plain = plainText(text);
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
