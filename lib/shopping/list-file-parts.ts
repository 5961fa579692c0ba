/** The colours of one theme. */
export interface FileColours {
  readonly paper: string;
  readonly ink: string;
  readonly soft: string;
  readonly line: string;
}

const vars = ({ paper, ink, soft, line }: FileColours) =>
  `:root{--paper:${paper};--ink:${ink};--soft:${soft};--line:${line}}`;

/** How the carried list looks: for one thumb, by day and by night, and on paper. */
export const listFileStyle = (day: FileColours, night: FileColours): string => `
:root{color-scheme:light dark}
${vars(day)}
@media (prefers-color-scheme:dark){${vars(night)}}
@media print{:root{color-scheme:light}${vars(day)}}
*{box-sizing:border-box}
body{margin:0;background:var(--paper);color:var(--ink);font:18px/1.4 system-ui,sans-serif}
main{max-width:40rem;margin:0 auto;padding:16px 16px 48px}
h1{font-size:28px;margin:0}h2{font-size:20px;margin:24px 0 4px}
p{margin:8px 0}ul{list-style:none;margin:0;padding:0}
li{border-bottom:1px solid var(--line);overflow-wrap:anywhere}
label{display:flex;gap:14px;align-items:flex-start;min-height:56px;padding:10px 0}
input{flex:none;width:32px;height:32px;margin:2px 0}
label b,small{display:block}small{color:var(--soft);font-size:15px}small b{color:var(--ink)}
li>small{padding-bottom:4px}
input:checked+span{text-decoration:line-through;color:var(--soft)}
output{display:block;font:600 22px/1.5 ui-monospace,monospace;overflow-wrap:anywhere;border:2px solid var(--ink);padding:8px 12px}
button{min-height:56px;padding:0 20px;font:600 18px system-ui,sans-serif;border:2px solid var(--ink);background:var(--ink);color:var(--paper)}
:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
@media print{body{font-size:10pt}label{min-height:0;padding:2pt 0}input{width:10pt;height:10pt}small{font-size:9pt}#back,#count{display:none}}
`;

/** What the carried list does: it keeps its ticks, and writes them as the code of `list-code.ts`. */
export const LIST_FILE_SCRIPT = `
(function () {
  var SIGNS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  var data = document.body.dataset;
  var count = Number(data.foods);
  var key = 'shopping ' + data.name + ' ' + data.made;
  var boxes = Array.prototype.slice.call(document.querySelectorAll('input[data-at]'));
  var byId = function (id) { return document.getElementById(id); };
  var keeps = true;
  try {
    var kept = JSON.parse(localStorage.getItem(key) || '[]');
    boxes.forEach(function (box) { box.checked = kept.indexOf(Number(box.dataset.at)) >= 0; });
  } catch (error) { keeps = false; }
  function code(ticked) {
    var body = data.name;
    for (var from = 0; from < count; from += 5) {
      var bits = 0;
      for (var at = 0; at < 5; at++) if (ticked.indexOf(from + at) >= 0) bits |= 16 >> at;
      body += SIGNS.charAt(bits);
    }
    var sum = 0;
    for (var i = 0; i < body.length; i++) sum = (sum + (SIGNS.indexOf(body.charAt(i)) + 1) * ((i % 1019) + 1)) % 1021;
    return (body + SIGNS.charAt(sum >> 5) + SIGNS.charAt(sum & 31)).replace(/(.{4})(?=.)/g, '$1-');
  }
  function show() {
    var ticked = boxes.filter(function (box) { return box.checked; }).map(function (box) { return Number(box.dataset.at); });
    byId('code').textContent = code(ticked);
    byId('count').textContent = ticked.length + ' of ' + boxes.length + ' in the basket';
    try { localStorage.setItem(key, JSON.stringify(ticked)); } catch (error) { keeps = false; }
    byId('kept').textContent = keeps ? '' : 'This app keeps nothing: copy the code before you close the list.';
  }
  boxes.forEach(function (box) { box.addEventListener('change', show); });
  byId('copy').addEventListener('click', function () {
    var select = function () {
      getSelection().selectAllChildren(byId('code'));
      byId('copied').textContent = 'The code is selected: copy it with your own keys or menu.';
    };
    if (!navigator.clipboard) return select();
    navigator.clipboard.writeText(byId('code').textContent).then(function () { byId('copied').textContent = 'Copied.'; }, select);
  });
  byId('back').hidden = false;
  show();
})();
`;
