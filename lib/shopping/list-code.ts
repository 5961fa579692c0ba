/**
 * The short code by which ticks come back from a list that was carried along as a file: which list it was, which of its
 * foods are ticked, and two characters that a slip of the hand does not get past.
 *
 * Characters are those of Crockford's base 32 (digits and letters without I, L, O and U, which are read as 1, 1, 0 and
 * refused), five bits each: 20 bits that name the list, one for each food, 10 to check.
 */

const SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const BITS = 5;
const NAME_SIGNS = 4;
const CHECK_SIGNS = 2;

/** The foods of a list as its code counts them: all that it needs, in an order that no stock and no shop changes. */
export function codeOrder(list: {
  readonly items: readonly { readonly foodId: string }[];
}): readonly string[] {
  return list.items.map(({ foodId }) => foodId).sort();
}

/** The characters that name a list by its foods. `listName(['a', 'b'])` → four characters. */
export function listName(foodIds: readonly string[]): string {
  let hash = 0x811c9dc5;
  for (const sign of foodIds.join('\n')) {
    // FNV-1a, 32 bits (Fowler, Noll, Vo; RFC 9923).
    hash = Math.imul(hash ^ (sign.codePointAt(0) ?? 0), 0x01000193) >>> 0;
  }
  return signs((hash ^ (hash >>> 20)) & 0xfffff, NAME_SIGNS);
}

function signs(value: number, count: number): string {
  let text = '';
  for (let at = count - 1; at >= 0; at--) text += SIGNS[(value >>> (at * BITS)) & 31] ?? '';
  return text;
}

/**
 * Two characters over all others: a sum of each times its place, whose weights make any one wrong character, and any
 * two neighbours in the wrong order, come out otherwise.
 */
function check(body: string): string {
  let sum = 0;
  for (const [at, sign] of [...body].entries()) {
    sum = (sum + (SIGNS.indexOf(sign) + 1) * ((at % 1019) + 1)) % 1021;
  }
  return signs(sum, CHECK_SIGNS);
}

/**
 * The code of a list with its ticks, in groups of four.
 * @param foodIds the list's foods, in the order of `codeOrder`
 * @example writeListCode(['a', 'b'], new Set(['b'])) // four characters of the list, one of ticks, two to check
 */
export function writeListCode(foodIds: readonly string[], ticked: ReadonlySet<string>): string {
  let body = listName(foodIds);
  for (let from = 0; from < foodIds.length; from += BITS) {
    const bits = foodIds.slice(from, from + BITS).map((id) => (ticked.has(id) ? 1 : 0));
    body += signs(
      bits.reduce<number>((sum, bit, at) => sum + (bit << (BITS - 1 - at)), 0),
      1,
    );
  }
  return (body + check(body)).replace(/(.{4})(?=.)/g, '$1-');
}

/** The ticked foods of a code, or why it is none of this list. */
export type ReadCode =
  | { readonly ok: true; readonly ticked: readonly string[] }
  | { readonly ok: false; readonly message: string };

const no = (message: string): ReadCode => ({ ok: false, message });

/** Far above any code; what is longer is something else that was pasted. */
const LONGEST = 2000;

/**
 * Reads a code as a person types or pastes it: small letters, blanks and strokes are forgiven, and O and I for 0 and 1.
 * Anything else is refused in words that say what is wrong.
 * @param foodIds the list's foods now, in the order of `codeOrder`
 * @example readListCode('7k2m-04', foods) // { ok: false, message: 'This code is too short …' }
 */
export function readListCode(text: string, foodIds: readonly string[]): ReadCode {
  if (text.length > LONGEST) return no('This is far longer than any code: paste the code alone.');
  const typed = text.toUpperCase().replace(/[\s\u00a0–—‐‑-]+/g, '');
  if (typed === '') return no('Paste the code that stands at the end of the list you carried.');
  const code = typed.replaceAll('O', '0').replace(/[IL]/g, '1');
  const strange = [...code].find((sign) => !SIGNS.includes(sign));
  if (strange !== undefined) {
    return no(`“${strange}” stands in no code: look at the characters again.`);
  }
  const long = NAME_SIGNS + Math.ceil(foodIds.length / BITS) + CHECK_SIGNS;
  const body = code.slice(0, -CHECK_SIGNS);
  const sound =
    code.length > NAME_SIGNS + CHECK_SIGNS - 1 && check(body) === code.slice(body.length);
  const ofThis = body.startsWith(listName(foodIds));
  if (sound && (!ofThis || code.length !== long)) {
    return no(
      'This code is of another list, or of this one before its dishes changed: tick by hand what the list you carried shows.',
    );
  }
  if (code.length !== long) {
    const off = code.length < long ? 'too short' : 'too long';
    return no(
      `This code is ${off}: it has ${code.length} characters, and this list’s has ${long}.`,
    );
  }
  if (!sound) return no('A character of this code is wrong: compare it with the list you carried.');
  const ticked = foodIds.filter((_, at) => {
    const sign = body[NAME_SIGNS + Math.floor(at / BITS)] ?? '0';
    return ((SIGNS.indexOf(sign) >> (BITS - 1 - (at % BITS))) & 1) === 1;
  });
  return { ok: true, ticked };
}
