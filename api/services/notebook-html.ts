import type { Entry } from '../contract/notebook.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const safe = (text: string) => text.replace(/[&<>"']/g, (letter) => ENTITIES[letter]!);

const STYLE = `
:root{color-scheme:light dark}
body{font:1.05rem/1.5 system-ui,sans-serif;max-width:48rem;margin:2rem auto;padding:0 1rem}
li{list-style:none;border-top:1px solid #8888;padding:.8rem 0;break-inside:avoid}
ol{padding:0}h1,h2{line-height:1.2}h2{font-size:1.1rem;margin:0}p{margin:.3rem 0}
figure{margin:.6rem 0}img{max-width:100%;max-height:24rem;height:auto}
.kind{font-variant:small-caps;margin-right:.5rem}figcaption,.date{font-size:.9rem}`;

/** The notebook as a page to read anywhere: no script, nothing from elsewhere, every text as text. */
export function notebookPage(
  study: string,
  entries: readonly Entry[],
  named: (picture: string) => string | undefined,
): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="script-src 'none'; object-src 'none'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Notebook of ${safe(study)}</title>
<style>${STYLE}</style>
</head>
<body>
<h1>Notebook of ${safe(study)}</h1>
<p>${entries.length} ${entries.length === 1 ? 'entry' : 'entries'}, newest first.</p>
<ol>
${entries.map((entry) => item(entry, named)).join('\n')}
</ol>
</body>
</html>
`;
}

function item(entry: Entry, named: (picture: string) => string | undefined): string {
  const { date, dated, kind, title, text, pictures } = entry;
  const shown = pictures.flatMap(({ id, alt }) => {
    const file = named(id);
    if (file === undefined) return [];
    return [
      `<figure><img src="${safe(file)}" alt="${safe(alt)}"><figcaption>${safe(alt)}</figcaption></figure>`,
    ];
  });
  return `<li><p class="date">${safe(date)}${dated ? '' : ', written down'}</p>
<h2><span class="kind">${safe(kind)}</span>${safe(title)}</h2>
${text === '' ? '' : `<p>${safe(text)}</p>`}${shown.join('')}</li>`;
}
