import { readStatements } from '#lib/claims/read-statements';
import type { Statement, TextContext } from '#lib/claims/statement';

const LISTED = ['nutrient', 'claim', 'unit', 'hedge', 'scope', 'against', 'food', 'dish'] as const;

function line(statement: Statement): string {
  const fields = statement as unknown as Readonly<Record<string, unknown>>;
  const { low, high } = fields;
  const number = low === undefined ? [] : [low === high ? low : `${String(low)}-${String(high)}`];
  const rest = LISTED.map((key) => fields[key]).filter((value) => value !== undefined);
  const said = [statement.kind, ...number, ...rest].map(String);
  return said.filter((word) => !['none', 'dish', 'between'].includes(word)).join(' ');
}

/** What a caption about a bean stew says, a line for each statement: 'nutrient 42 protein g portion'. */
export function brief(text: string, context: Partial<TextContext> = {}): string[] {
  return readStatements(text, {
    form: 'captions',
    dish: 'Smoky bean stew',
    dishes: ['Smoky bean stew'],
    ...context,
  }).map(line);
}
