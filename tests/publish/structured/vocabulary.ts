import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

/** An interface of the declarations: the properties of its own, and what it extends. */
interface Declared {
  readonly properties: ReadonlySet<string>;
  readonly bases: readonly string[];
}

/**
 * Properties of each type of schema.org, read from the declarations of schema-dts 2.1.0, which are generated from the
 * vocabulary's own file: a reading of the text, apart from the compiler that checks the same declarations.
 */
export function propertiesOf(type: string): ReadonlySet<string> {
  const before = known.get(type);
  if (before) return before;
  const found = declared().get(`${type}Base`);
  if (!found) throw new Error(`the vocabulary has no type ${type}`);
  const all = new Set(found.properties);
  for (const base of found.bases) {
    for (const property of propertiesOf(base.replace(/Base$/, ''))) all.add(property);
  }
  known.set(type, all);
  return all;
}

const known = new Map<string, ReadonlySet<string>>();
let read: ReadonlyMap<string, Declared> | null = null;

function declared(): ReadonlyMap<string, Declared> {
  read ??= new Map(
    [...declarations().matchAll(/^interface (\w+Base) extends ([^{]+) \{\n([\s\S]*?)^\}/gm)].map(
      ([, name = '', bases = '', body = '']) => [
        name,
        {
          bases: bases
            .split(',')
            .map((base) => base.trim())
            .filter((base) => base.endsWith('Base')),
          properties: new Set([...body.matchAll(/^ {4}"(\w+)"\?:/gm)].map(([, of = '']) => of)),
        },
      ],
    ),
  );
  return read;
}

function declarations(): string {
  const path = createRequire(import.meta.url).resolve('schema-dts');
  return readFileSync(path.replace(/\.js$/, '.d.ts'), 'utf8');
}

/** A node of JSON-LD with its place in the data. */
export interface Node {
  readonly path: string;
  readonly type: string;
  readonly entries: readonly (readonly [string, unknown])[];
}

/** Every node that says its type, from the top down. */
export function nodesIn(value: unknown, path = '$'): Node[] {
  if (Array.isArray(value)) return value.flatMap((each, at) => nodesIn(each, `${path}[${at}]`));
  if (typeof value !== 'object' || value === null) return [];
  const all: [string, unknown][] = Object.entries(value);
  const type = all.find(([key]) => key === '@type')?.[1];
  const entries = all.filter(([key]) => !key.startsWith('@'));
  const within = all.flatMap(([key, each]) => nodesIn(each, `${path}.${key}`));
  return typeof type === 'string' ? [{ path, type, entries }, ...within] : within;
}
