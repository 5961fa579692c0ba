import { posix } from 'node:path';
import ts from 'typescript';
import { CLIENT, IMPURE, SHARED, areaOf, type Area } from './areas';

/** A source file by its path from the project's folder. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

interface Found {
  readonly line: number;
  readonly what: string;
}

/** Modules that would make a pure area depend on a machine, a moment or a page. */
const OUTSIDE = new RegExp(
  '^(?:node:)?(?:fs|fs/promises|child_process|http|https|net|os|worker_threads|process|timers)$' +
    '|^(?:react|react-dom|next|better-sqlite3|server-only|@prisma)(?:/|$)',
);

const parse = (file: SourceFile): ts.SourceFile =>
  ts.createSourceFile(
    file.path,
    file.text,
    ts.ScriptTarget.Latest,
    true,
    file.path.endsWith('x') ? ts.ScriptKind.TSX : ts.ScriptKind.TS,
  );

function everyNode(tree: ts.SourceFile, visit: (node: ts.Node) => string | null): Found[] {
  const found: Found[] = [];
  const walk = (node: ts.Node): void => {
    const what = visit(node);
    const at = tree.getLineAndCharacterOfPosition(node.getStart(tree));
    if (what !== null) found.push({ line: at.line + 1, what });
    ts.forEachChild(node, walk);
  };
  walk(tree);
  return found;
}

/** Every module that a file names: import, export from, import type, import(), require(). */
export function importsOf(file: SourceFile): Found[] {
  return everyNode(parse(file), (node) => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) {
      const from = node.moduleSpecifier;
      return from !== undefined && ts.isStringLiteral(from) ? from.text : null;
    }
    if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      return ts.isStringLiteral(node.argument.literal) ? node.argument.literal.text : null;
    }
    if (!ts.isCallExpression(node)) return null;
    const named =
      node.expression.kind === ts.SyntaxKind.ImportKeyword ||
      (ts.isIdentifier(node.expression) && node.expression.text === 'require');
    const [first] = node.arguments;
    return named && first !== undefined && ts.isStringLiteralLike(first) ? first.text : null;
  });
}

/** An import as a path from the project's folder, or null for a package. */
export function resolveImport(from: string, specifier: string): string | null {
  const [, scope, rest] = /^#(lib|seed|db)\/(.*)$/.exec(specifier) ?? [];
  if (scope !== undefined) return `${scope === 'db' ? 'prisma' : scope}/${rest ?? ''}`;
  return specifier.startsWith('.') ? posix.join(posix.dirname(from), specifier) : null;
}

function importFault(file: SourceFile, specifier: string, areas: readonly Area[]): string | null {
  const own = areaOf(file.path, areas);
  if (own === undefined) return 'stands in no area of the table';
  const target = resolveImport(file.path, specifier);
  if (target === null) {
    return isPure(file.path) && OUTSIDE.test(specifier)
      ? `imports ${specifier}, and its area is pure`
      : null;
  }
  if (target.startsWith(CLIENT)) {
    const may = own.path === 'prisma/' || own.mayImport.includes(CLIENT);
    return may ? null : 'imports the generated database client';
  }
  if (`${target}.ts` === SHARED || target === SHARED) return null;
  const area = areaOf(target, areas) ?? areaOf(`${target}.ts`, areas);
  if (area === undefined) return target.includes('/') ? `imports ${target}, in no area` : null;
  if (area.path === own.path || own.mayImport.includes(area.path)) return null;
  return `imports ${target}, and ${own.path} may not import ${area.path}`;
}

const isPure = (path: string): boolean =>
  path.startsWith('lib/') &&
  (!IMPURE.some((area) => path.startsWith(area)) ||
    (path.startsWith('lib/sheet/') && path !== 'lib/sheet/cli.ts'));

/** A clock or chance in code: they come in as arguments. */
function clockOrChance(node: ts.Node): string | null {
  if (ts.isNewExpression(node) && (node.arguments?.length ?? 0) === 0) {
    return node.expression.getText() === 'Date' ? 'reads the clock by new Date()' : null;
  }
  if (!ts.isPropertyAccessExpression(node)) return null;
  const text = node
    .getText()
    .replace(/\s/g, '')
    .replace(/^globalThis\./, '');
  const banned = ['Date.now', 'Math.random', 'performance.now', 'crypto.randomUUID', 'process.env'];
  return banned.includes(text) ? `uses ${text}` : null;
}

/** Arithmetic that belongs into `lib/`, wherever a page or an element shows a value. */
function arithmetic(node: ts.Node): string | null {
  if (!ts.isPropertyAccessExpression(node)) return null;
  const name = node.name.text;
  if (['reduce', 'reduceRight', 'toFixed', 'toPrecision'].includes(name)) return `uses .${name}`;
  return node.getText().replace(/\s/g, '') === 'Math.round' ? 'uses Math.round' : null;
}

/** Every breach of the rules in a list of files, as `path:line what`. */
export function faultsOf(files: readonly SourceFile[], areas: readonly Area[]): string[] {
  return files.flatMap((file) => {
    const imports = importsOf(file).flatMap(({ line, what }) => {
      const fault = importFault(file, what, areas);
      return fault === null ? [] : [{ line, what: fault }];
    });
    const tree = parse(file);
    const drawn = file.path.endsWith('/geometry.ts');
    const code = [
      ...(isPure(file.path) ? everyNode(tree, clockOrChance) : []),
      ...(file.path.startsWith('app/') && !drawn ? everyNode(tree, arithmetic) : []),
    ];
    return [...imports, ...code].map(({ line, what }) => `${file.path}:${line} ${what}`);
  });
}
