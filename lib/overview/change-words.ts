import { plain, type Field, type JournalRow, type Telling } from '#lib/overview/change-fields';
import { SUBJECTS, type Subject } from '#lib/overview/change-subjects';

/** One line of the journal: a row before and after; null where there was or is none. */
export interface ChangeLine {
  readonly entity: string;
  readonly entityId: string;
  readonly before: JournalRow | null;
  readonly after: JournalRow | null;
}

type Verb = 'added' | 'taken out' | 'brought back' | 'changed' | 'moved';

interface Told extends ChangeLine {
  readonly subject: Subject;
  readonly verb: Verb;
  /** The row as it is spoken of: as it stands, or as it last stood. */
  readonly row: JournalRow;
}

/** What is kept beside an act for later, and told only where nothing else was done. */
const ASIDE: ReadonlySet<string> = new Set(['LineMatch', 'Draft']);
/** Names told of several at most; the rest is a number. */
const NAMED = 4;
/** Letters of one value; a longer one is cut, the whole stands in its form. */
const LONGEST = 160;

/**
 * What an act of the journal did, in sentences: where, what, from which value to which. Every column is called
 * as on screen, and one that a person never reads is not told.
 *
 * @example actWords([update of '200 g pearl barley' to '220 g pearl barley'], telling)
 *   // ['Barley skillet: 200 g pearl barley → 220 g pearl barley']
 */
export function actWords(lines: readonly ChangeLine[], telling: Telling): readonly string[] {
  const all = lines.flatMap((line) => toldOf(line, telling) ?? []);
  const seen = all.filter(({ entity }) => !ASIDE.has(entity));
  const told = seen.length > 0 ? seen : all;
  if (told.every(({ entity }) => entity === 'Draft'))
    return told.flatMap((each) => kept(each, telling));
  return [
    ...(['taken out', 'added', 'brought back'] as const).flatMap((verb) =>
      comings(
        told.filter((each) => each.verb === verb),
        verb,
        telling,
      ),
    ),
    ...oncePerName(
      told.filter(({ verb }) => verb === 'changed'),
      telling,
    ).flatMap((each) => changed(each, telling)),
    ...moves(
      told.filter(({ verb }) => verb === 'moved'),
      telling,
    ),
  ];
}

/** The fields of a row that differ, each with what it was and is. Exported for the law over every column. */
export function fieldChanges(
  { entity, before, after }: Pick<ChangeLine, 'entity' | 'before' | 'after'>,
  telling: Telling,
): readonly { readonly words: string; readonly from: string; readonly to: string }[] {
  const fields: readonly Field[] = SUBJECTS[entity]?.fields ?? [];
  return fields.flatMap(({ words, columns, say }) => {
    if (!before || !after || columns.every((name) => same(before[name], after[name]))) return [];
    return [{ words, from: say(before, telling), to: say(after, telling) }];
  });
}

function toldOf(line: ChangeLine, telling: Telling): Told | null {
  const subject = SUBJECTS[line.entity];
  const row = line.after ?? line.before;
  if (!subject || !row) return null;
  return { ...line, subject, row, verb: verbOf(line, subject, telling) };
}

function verbOf(line: ChangeLine, { placed }: Subject, telling: Telling): Verb {
  const was = line.before !== null && line.before.deletedAt === null;
  const is = line.after !== null && line.after.deletedAt === null;
  if (!was) return line.before === null ? 'added' : 'brought back';
  if (!is) return 'taken out';
  const moved = placed === true && !same(line.before?.position, line.after?.position);
  return moved && fieldChanges(line, telling).length === 0 ? 'moved' : 'changed';
}

/** Rows that came or went together: the first kind by name, the rest by number. */
function comings(told: readonly Told[], verb: Verb, telling: Telling): readonly string[] {
  const order = Object.values(SUBJECTS);
  const seen = told
    .filter(({ subject }) => subject.kind !== null)
    .sort((a, b) => order.indexOf(a.subject) - order.indexOf(b.subject));
  const [first] = seen;
  if (!first) return [];
  const heads = seen.filter(({ subject }) => subject === first.subject);
  const places = new Set(heads.map((head) => placeOf(head, telling)));
  const names = heads.map(({ subject, row }) => cut(subject.name(row, telling)));
  const kind = kindOf(first.subject, heads);
  const what = heads.length === 1 ? `${kind} ${verb}` : `${heads.length} ${kind} ${verb}`;
  const place = places.size === 1 ? [...places][0] : '';
  const with_ = countsOf(seen.filter(({ subject }) => subject !== first.subject));
  const sentence = `${place ? `${place}: ` : ''}${what}${listed(names)}${with_}`;
  return [capital(sentence)];
}

/** "dish", "talk", or what the subject is called. */
function kindOf({ kind }: Subject, heads: readonly Told[]): string {
  const [one, several] = kind ?? ['', ''];
  const single = heads.length === 1 ? heads[0] : undefined;
  if (single?.entity === 'Segment') return single.row.kind === 'recipe' ? 'dish' : 'talk';
  return heads.length === 1 ? one : several;
}

function listed(names: readonly string[]): string {
  const said = names.filter((name) => name !== '');
  if (said.length === 0) return '';
  const more = said.length > NAMED ? ` and ${said.length - NAMED} more` : '';
  return `: ${said.slice(0, NAMED).join(', ')}${more}`;
}

function countsOf(told: readonly Told[]): string {
  const subjects = [...new Set(told.map(({ subject }) => subject))];
  const counts = subjects.map((subject) => {
    const count = told.filter((each) => each.subject === subject).length;
    const [one, several] = subject.kind ?? ['', ''];
    return `${count} ${count === 1 ? one : several}`;
  });
  return counts.length === 0 ? '' : `, with ${counts.join(', ')}`;
}

/** Rows without those of which nothing changed but a name that another row has told, as a dish's recipe has its title. */
function oncePerName(rows: readonly Told[], telling: Telling): readonly Told[] {
  const nameOf = ({ subject, before, after }: Told) =>
    before && after ? `${subject.name(before, telling)}\n${subject.name(after, telling)}` : '';
  const named = new Set(rows.filter(({ subject }) => subject.kind !== null).map(nameOf));
  const isAgain = (told: Told) =>
    told.subject.kind === null &&
    fieldChanges(told, telling).length === 1 &&
    named.has(nameOf(told));
  return rows.filter((told) => !isAgain(told));
}

/** One sentence for a changed row; its own words first, as "200 g barley → 220 g barley". */
function changed(told: Told, telling: Telling): readonly string[] {
  const { subject, before, after } = told;
  if (!before || !after) return [];
  const [from, to] = [subject.name(before, telling), subject.name(after, telling)];
  const changes = fieldChanges(told, telling);
  const renamed = from !== to;
  const own = renamed ? [`${valued(from)} → ${valued(to)}`] : [];
  // What the name says already is not said again.
  const rest = changes.filter((each) => !renamed || each.from !== from || each.to !== to);
  const parts = [
    ...own,
    ...rest.map(({ words, from: was, to: is }) => `${words} ${valued(was)} → ${valued(is)}`),
  ];
  if (parts.length === 0) return [];
  const place = placeOf(told, telling);
  const name = renamed || subject.kind === null ? '' : cut(to);
  const where = [place, name].filter((text) => text !== '').join(', ');
  const kind = kindOf(subject, [told]);
  const what = headOf(kind, told.entity === 'Segment', renamed);
  return [capital(`${where || what}: ${parts.join('; ')}`)];
}

/** How a sentence about a changed row begins that has neither a place nor a name: 'dish renamed', 'reading put right'. */
function headOf(kind: string, isSegment: boolean, renamed: boolean): string {
  if (kind === '') return renamed ? 'title changed' : 'changed';
  return isSegment && renamed ? `${kind} renamed` : kind;
}

/** What was typed and not saved, beside what it was typed into; that it was put away later says nothing. */
function kept(told: Told, telling: Telling): readonly string[] {
  if (told.after === null || told.verb === 'taken out') return [];
  const texts = told.subject.name(told.row, telling);
  const place = placeOf(told, telling);
  return [capital(`${place === '' ? '' : `${cut(place)}: `}typed and not saved: ${valued(texts)}`)];
}

/** Rows that changed places: how they stood, and how they stand. */
function moves(told: readonly Told[], telling: Telling): readonly string[] {
  const groups = new Map<string, Told[]>();
  for (const each of told) {
    if (each.subject.kind === null) continue;
    const key = `${each.entity} ${placeOf(each, telling)}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const place = placeOf(first, telling);
    const order = (of: 'before' | 'after') =>
      [...group]
        .sort((a, b) => Number(a[of]?.position) - Number(b[of]?.position))
        .map(({ subject, row }) => cut(subject.name(row, telling)));
    const several = first.subject.kind?.[1] ?? '';
    const where = place === '' ? '' : `${place}: `;
    return [
      capital(
        `${where}order of ${several}: ${order('before').join(', ')} → ${order('after').join(', ')}`,
      ),
    ];
  });
}

function placeOf({ subject, row }: Told, { names }: Telling): string {
  return subject.place === undefined ? '' : (names[plain(row[subject.place])] ?? '');
}

function valued(text: string): string {
  return text === '' ? 'none' : cut(text);
}

function cut(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > LONGEST ? `${line.slice(0, LONGEST - 1)}…` : line;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
