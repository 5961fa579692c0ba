import { cleanTitle } from './clean-title';
import { fromLine } from './described';
import { ingredientRow } from './ingredient-row';
import { isList, listPieces } from './list-pieces';
import { readPortions } from './portions-said';
import type { Reading } from './reading';
import type { RowKind } from './row-kinds';
import { takeProse } from './take-prose';
import { foldRow, type Row } from './text-rows';
import { ELSEWHERE, OTHER, PART } from './words';

/** A row of a table: an ingredient, or the total below them. */
export function takeTable(
  reading: Reading,
  row: Row,
  table: Extract<RowKind, { kind: 'table' }>['table'],
): void {
  if (table.kind === 'total') reading.leave('numbers', row);
  if (table.kind !== 'ingredient') return;
  reading.dishes.any();
  reading.section = 'list';
  reading.dishes.addLine(row, table.words);
}

/** A heading with its list on one line: "Lunch – 150 g chicken, 1 tortilla", or a part of the dish in hand. */
export function takeInline(
  reading: Reading,
  row: Row,
  inline: Extract<RowKind, { kind: 'inline' }>,
): void {
  const { head, pieces, portions } = inline;
  const title = cleanTitle(head);
  const inside =
    reading.dishes.current !== null &&
    reading.dishes.current.style !== 'inline' &&
    reading.section === 'list';
  const isPart = PART.test(foldRow(title)) || (inside && pieces.length === 1);
  const ofNoDish = reading.section === 'other' || OTHER.test(foldRow(title));
  if (ofNoDish) takeProse(reading, row);
  else if (isPart || !/\p{L}/u.test(title)) {
    reading.dishes.any();
    reading.section = 'list';
  } else {
    const many = isList(pieces) || reading.dishes.current?.style === 'inline';
    if (!many) {
      takeProse(reading, row);
      return;
    }
    const open = reading.dishes.open({ text: title, from: fromLine(row.line, row.text) }, 'inline');
    reading.dishes.givePortions(open, row, portions);
    reading.section = 'list';
  }
  if (reading.section === 'list') for (const piece of pieces) reading.dishes.addLine(row, piece);
}

/** "Ingredients", with or without a dish's name, its portions or a list behind it. */
export function takeLabel(
  reading: Reading,
  row: Row,
  label: Extract<RowKind, { kind: 'ingredientsLabel' }>,
): void {
  const rest = label.rest.replace(/^[([]|[)\]]:?$/g, '').trim();
  const folded = foldRow(rest);
  const pieces = listPieces(rest);
  const named = cleanTitle(label.title || rest.replace(/^(?:for|of)\s+/i, ''));
  if (rest !== '' && ELSEWHERE.test(folded)) {
    reading.leave('elsewhere', row);
    reading.section = 'none';
    return;
  }
  const isPart = PART.test(folded) || PART.test(foldRow(named));
  const plain =
    (label.title === '' && rest === '') || isPart || isList(pieces) || ingredientRow(rest) !== null;
  const portions = label.portions ?? readPortions(folded, true);
  if (plain || readPortions(folded, true) !== null) reading.dishes.continueOrOpen();
  else reading.dishes.open({ text: named, from: fromLine(row.line, row.text) }, 'plain');
  reading.section = 'list';
  const dish = reading.dishes.current;
  if (!dish) return;
  dish.labelled = true;
  reading.dishes.givePortions(dish, row, portions);
  if (!isPart && rest !== '' && readPortions(folded, true) === null) {
    if (isList(pieces)) for (const piece of pieces) reading.dishes.addLine(row, piece);
    else if (ingredientRow(rest)) reading.dishes.addLine(row, rest);
  }
}
