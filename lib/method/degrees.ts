import type { Token } from '#lib/episode/read-ingredient-tokens';
import { digits, numberAt } from '#lib/method/number';
import type { Setting } from '#lib/method/method-step';
import { word } from '#lib/method/words-at';

/** Figures of temperature that stand together, with their place among the tokens. */
export interface FiguresAt {
  readonly from: number;
  readonly next: number;
  readonly settings: readonly Setting[];
}

/** No home oven is set so high in °C: bare degrees from here on are °F (common practice, no source). */
const LEAST_BARE_F = 275;
/** Between these a bare number after 'oven to' is a setting. */
const BARE = { least: 50, most: 550 } as const;

interface Raw {
  readonly from: number;
  readonly next: number;
  readonly values: readonly number[];
  readonly unit: Setting['unit'] | 'bare' | null;
}

/** The unit after a number: '°C', ' degrees F', 'F', 'C', or degrees of neither; null where none is written. */
function unitAt(
  tokens: readonly Token[],
  at: number,
): { unit: 'C' | 'F' | 'bare'; next: number } | null {
  let place = at;
  if (word(tokens, place) === '-' && !tokens[place]?.spaced) place += 1;
  const mark = /^(?:°|degrees?|deg)$/.test(word(tokens, place));
  if (mark) place += 1;
  if (mark && word(tokens, place) === '.') place += 1;
  const text = word(tokens, place);
  const written = tokens[place]?.text ?? '';
  if (/^(?:celsius|centigrade)$/.test(text)) return { unit: 'C', next: place + 1 };
  if (text === 'fahrenheit') return { unit: 'F', next: place + 1 };
  const letter = mark || !tokens[place]?.spaced ? /^[cf]$/i : /^[CF]$/;
  if (letter.test(written)) return { unit: text === 'c' ? 'C' : 'F', next: place + 1 };
  return mark ? { unit: 'bare', next: place } : null;
}

/** Two settings in one, as '180/160'. */
const STROKE = /^(\d{2,3})\/(\d{2,3})$/;

/** A number, or a range, or two written with a stroke ('180/160'). */
function valuesAt(tokens: readonly Token[], at: number): { values: number[]; next: number } | null {
  const stroke = STROKE.exec(tokens[at]?.text ?? '');
  if (stroke) return { values: [Number(stroke[1]), Number(stroke[2])], next: at + 1 };
  if (tokens[at]?.kind !== 'number' && !/^(?:an?|one|two|three|four|half)$/.test(word(tokens, at)))
    return null;
  const first = numberAt(tokens, at);
  if (!first) return null;
  const divides = word(tokens, first.next);
  const between = word(tokens, at - 1) === 'between' && divides === 'and';
  if (!/^(?:-|–|—|−|to|or)$/.test(divides) && !between)
    return { values: [first.value], next: first.next };
  const second =
    tokens[first.next + 1]?.kind === 'number' ? digits(tokens[first.next + 1]?.text ?? '') : null;
  return second === null
    ? { values: [first.value], next: first.next }
    : { values: [first.value, second], next: first.next + 2 };
}

function gasAt(tokens: readonly Token[], at: number): Raw | null {
  if (!/^(?:gas|mark|regulo)$/.test(word(tokens, at))) return null;
  let place = at + 1;
  if (word(tokens, at) === 'gas' && /^mark$/.test(word(tokens, place))) place += 1;
  const read = valuesAt(tokens, place);
  if (!read || read.values.some((value) => value > 10)) return null;
  return { from: at, next: read.next, values: read.values, unit: 'gas' };
}

function rawAt(tokens: readonly Token[], at: number): Raw | null {
  const gas = gasAt(tokens, at);
  if (gas) return gas;
  // '180C to 200C' are two figures of one unit each, found one after the other.
  const plain = tokens[at]?.kind === 'number' && !STROKE.test(tokens[at]?.text ?? '');
  const own = plain ? numberAt(tokens, at) : null;
  const ownUnit = own ? unitAt(tokens, own.next) : null;
  if (own && ownUnit)
    return { from: at, next: ownUnit.next, values: [own.value], unit: ownUnit.unit };
  const read = valuesAt(tokens, at);
  if (!read) return null;
  const unit = unitAt(tokens, read.next);
  if (unit) return { from: at, next: unit.next, values: read.values, unit: unit.unit };
  const fan =
    /^(?:fan|convection)/.test(word(tokens, at - 1)) ||
    /^(?:fan|convection)/.test(word(tokens, read.next));
  const set = /^(?:oven|fryer) (?:to|at)$/.test(`${word(tokens, at - 2)} ${word(tokens, at - 1)}`);
  const at100 =
    word(tokens, at - 1) === 'at' &&
    /^(?:for|,|\.|until|\(|)$/.test(word(tokens, read.next)) &&
    read.values.every((value) => value >= 100);
  const fits = read.values.every((value) => value >= BARE.least && value <= BARE.most);
  const measured = /^(?:g|ml|kg|w|watts?|minutes?|mins?|cm|mm|%)$/.test(word(tokens, read.next));
  if (!fits || measured || !(fan || set || at100)) return null;
  return {
    from: at,
    next: read.next,
    values: read.values,
    unit: (set || at100) && !fan ? 'bare' : null,
  };
}

const isFan = (text: string): boolean => /^(?:fan|convection)/.test(text);

/** Whether a figure is said for moving air: 'fan' beside it, or before it with a few words between. */
function fanAt(tokens: readonly Token[], raws: readonly Raw[], index: number): boolean {
  const [last, raw, next] = [raws[index - 1], raws[index], raws[index + 1]];
  if (!raw) return false;
  const after = word(tokens, raw.next) === '(' ? raw.next + 1 : raw.next;
  for (let at = after; at < after + 3 && at < tokens.length; at += 1) {
    const text = word(tokens, at);
    // 'fan' directly before the next figure is that one's.
    if (isFan(text)) return next?.from !== at + 1;
    if (!/^(?:on|the|a|for|in|with|using)$/.test(text)) break;
  }
  for (let at = raw.from - 1; at >= raw.from - 6 && at >= 0; at -= 1) {
    const text = word(tokens, at);
    // Directly after another figure it is that one's, unless it stands directly before this one.
    if (isFan(text)) return at + 1 === raw.from || !last || at > last.next + 1;
    if (
      !/^(?:oven|ovens|to|at|setting|set|assisted|forced|preheated|a|the|mode|:|of|is|,|about|bake|roast)$/.test(
        text,
      )
    ) {
      break;
    }
  }
  return false;
}

const JOINS =
  /^(?:\/|\(|\)|,|or|-|–|—|to|and|fan|convection|oven|setting|fan-assisted|fan-forced|the|on|for|if|using|in|with|a|:|=|;|fan-oven|conventional|conventionally|about|,)$/;

/**
 * Figures of temperature of a sentence, those of one setting together ('180C/160C fan/gas 4'), in the order of
 * the text. A figure below zero is left out. `figuresOf(tokenize('Bake at 180C/gas 4'))` → one, with two settings.
 */
export function figuresOf(tokens: readonly Token[]): FiguresAt[] {
  const raws: Raw[] = [];
  for (let at = 0; at < tokens.length;) {
    const raw = rawAt(tokens, at);
    const minus =
      /^[-−–]$/.test(word(tokens, at - 1)) &&
      tokens[at - 1]?.spaced === true &&
      !tokens[at]?.spaced;
    if (raw && !minus) raws.push(raw);
    at = raw?.next ?? at + 1;
  }
  const groups: FiguresAt[] = [];
  raws.forEach((raw, index) => {
    const unit = unitOf(raws, index);
    if (unit === null) return;
    const fan = fanAt(tokens, raws, index) ? ({ fan: true } as const) : {};
    const settings = raw.values.map((value, place): Setting => {
      // Of two with a stroke, 'fan' after them is said for the second.
      const own = raw.values.length === 2 && /\//.test(tokens[raw.from]?.text ?? '') && place === 0;
      return {
        value,
        unit: unit === 'bare' ? (value >= LEAST_BARE_F ? 'F' : 'C') : unit,
        ...(own ? {} : fan),
      };
    });
    const last = groups.at(-1);
    const joined =
      last !== undefined &&
      raw.from - last.next <= 6 &&
      tokens.slice(last.next, raw.from).every(({ folded }) => JOINS.test(folded));
    if (joined && last) {
      groups[groups.length - 1] = {
        ...last,
        next: raw.next,
        settings: [...last.settings, ...settings],
      };
    } else groups.push({ from: raw.from, next: raw.next, settings });
  });
  // 'fan' after the last figure belongs to its words.
  return groups.map((group) =>
    isFan(word(tokens, group.next)) ? { ...group, next: group.next + 1 } : group,
  );
}

/** A figure without a unit takes that of its neighbour. */
function unitOf(raws: readonly Raw[], index: number): Setting['unit'] | 'bare' | null {
  const raw = raws[index];
  if (!raw) return null;
  if (raw.unit !== null) return raw.unit;
  const near = [raws[index - 1], raws[index + 1]].find(
    (other) => other?.unit === 'C' || other?.unit === 'F',
  );
  return near?.unit ?? 'bare';
}
