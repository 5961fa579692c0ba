import { codeOrder, listName } from '#lib/shopping/list-code';
import { LIST_FILE_SCRIPT, listFileStyle, type FileColours } from '#lib/shopping/list-file-parts';
import type { ShoppingItem, ShoppingList } from '#lib/shopping/list-types';
import type { Shelves } from '#lib/shopping/shelf-rows';
import { buyText, costText, needText } from '#lib/shopping/shopping-text';
import { printDay } from '#lib/units/print-date';

export interface FileLook {
  /** The local date on which it is made. */
  readonly madeOn: string;
  readonly day: FileColours;
  readonly night: FileColours;
}

/**
 * The list as one file that needs nothing else: it opens from the files of a phone, without a server, a network or
 * anything beside it. What is ticked is kept by the browser where it keeps anything for files, and comes back as a short
 * code (`list-code.ts`).
 */
export function listFile(
  list: ShoppingList,
  { toBuy, inStock }: Shelves,
  { madeOn, day, night }: FileLook,
): string {
  const foods = codeOrder(list);
  const name = listName(foods);
  const when = list.forDate ? `for ${printDay(list.forDate)}, ` : '';
  const groups = toBuy.map(
    ({ title, items }) =>
      `<h2>${html(title)}</h2>\n<ul>\n${items.map((item) => row(item, list, foods)).join('\n')}\n</ul>`,
  );
  const unmatched = list.unmatched.map(
    ({ segment, line }) => `<li>${html(line)} <small>${html(segment)}</small></li>`,
  );
  const kitchen = inStock.map((item) => {
    const need = needText(item, list.shelfUnits);
    return `<li>${html(item.name)}${need === '' ? '' : ` <small>${html(need)}</small>`}</li>`;
  });
  const costs = [...(list.cost ? [list.cost] : []), ...list.otherCosts];
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>Shopping: ${html(list.episode)}</title>
<style>${listFileStyle(day, night)}</style>
</head>
<body data-name="${name}" data-foods="${foods.length}" data-made="${html(madeOn)}">
<main>
<h1>Shopping</h1>
<p>${html(list.episode)}<br><small>${html(when)}made ${html(printDay(madeOn))}</small></p>
<p id="count" role="status"></p>
${groups.join('\n')}
${part('No food chosen yet', unmatched)}
${part('Already in the kitchen', kitchen)}
${costs.map((cost) => `<p>Cost: ${html(costText(cost))}</p>`).join('\n')}
<section id="back" hidden>
<h2>Bring the ticks back</h2>
<p>Copy this code and paste it on the shopping page of the episode.</p>
<p><output id="code"></output></p>
<p><button type="button" id="copy">Copy the code</button> <span id="copied" role="status"></span></p>
<p id="kept"></p>
</section>
<noscript><p>This app shows no scripts: ticks hold while it stays open, and there is no code. Open the file in a browser.</p></noscript>
</main>
<script>${LIST_FILE_SCRIPT}</script>
</body>
</html>
`;
}

function row(item: ShoppingItem, list: ShoppingList, foods: readonly string[]): string {
  const { shelfUnits: units } = list;
  const need = needText(item, units);
  const more = [
    ...item.notes.map((note) => `<b>${html(note)}</b>`),
    ...(need === '' ? [] : [html(need)]),
    ...item.open.map((line) => `amount open: ${html(line)}`),
    ...item.asks.map(html),
  ];
  const words = more.map((text) => `<small>${text}</small>`).join('');
  const at = foods.indexOf(item.foodId);
  return `<li><label><input type="checkbox" data-at="${at}"><span>${html(item.name)}<b>${html(buyText(item, units))}</b>${words}</span></label></li>`;
}

function part(title: string, rows: readonly string[]): string {
  return rows.length === 0 ? '' : `<h2>${title}</h2>\n<ul>\n${rows.join('\n')}\n</ul>`;
}

const MARKS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Words as HTML text, also within an attribute. */
function html(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => MARKS[sign] ?? sign);
}
