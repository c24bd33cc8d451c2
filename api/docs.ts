import { html, raw } from 'hono/html';
import { type JsonSchema, schemaText } from './docs-schema.ts';

interface Content {
  readonly content?: Readonly<Record<string, { readonly schema?: JsonSchema }>>;
  readonly description?: string;
}
interface Operation {
  readonly summary?: string;
  readonly tags?: readonly string[];
  readonly parameters?: readonly {
    readonly name: string;
    readonly in: string;
    readonly required?: boolean;
    readonly schema?: JsonSchema;
  }[];
  readonly requestBody?: Content;
  readonly responses: Readonly<Record<string, Content>>;
}
interface Document {
  readonly info: { readonly title: string; readonly version: string; readonly description?: string };
  readonly paths?: Readonly<Record<string, object>>;
  readonly components?: { readonly schemas?: Readonly<Record<string, object>> };
}
interface Entry {
  readonly method: string;
  readonly path: string;
  readonly operation: Operation;
}

/** The API as a page to be read, made from the OpenAPI document alone: no script, nothing fetched from elsewhere. */
export function docsPage(document: object) {
  const { info, paths = {}, components } = document as Document;
  const entries = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]): Entry => ({ method, path, operation })),
  );
  const tags = [...new Set(entries.map(tagOf))];
  const schemas = Object.entries(components?.schemas ?? {}) as [string, JsonSchema][];
  return html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${info.title} API</title>
<style>${raw(STYLE)}</style>
</head>
<body>
<header>
<h1>${info.title} API <small>${info.version}</small></h1>
<p>${info.description?.replaceAll('`', '')}</p>
<p>Any operation may answer with a <a href="#schema-Problem">Problem</a> instead.</p>
<p>The same as a machine reads it: <a href="/api/openapi.json">OpenAPI 3.1 document</a>. <a href="/">Back to the pages</a>.</p>
</header>
<nav aria-label="Contents">
${tags.map(
  (tag) => html`<section><h2><a href="#${slug(tag)}">${tag}</a></h2><ul>
${entries.filter((one) => tagOf(one) === tag).map((one) => html`<li><a href="#${anchor(one)}">${one.operation.summary}</a></li>`)}
</ul></section>`,
)}
</nav>
<main>
${tags.map(
  (tag) => html`<h2 id="${slug(tag)}">${tag}</h2>
${entries.filter((one) => tagOf(one) === tag).map(operationSection)}`,
)}
<h2 id="schemas">Schemas</h2>
${schemas.map(([name, schema]) => html`<section><h3 id="schema-${name}">${name}</h3>${block(schema, name)}</section>`)}
</main>
</body>
</html>`;
}

function operationSection(entry: Entry) {
  const { method, path, operation } = entry;
  return html`<section>
<h3 id="${anchor(entry)}">${operation.summary}</h3>
<p class="address"><b>${method.toUpperCase()}</b> <code>${path}</code></p>
${operation.parameters?.length ? parameterList(operation.parameters) : ''}
${operation.requestBody ? contents('Takes', operation.requestBody, entry) : ''}
${Object.entries(operation.responses)
  .filter(([status]) => status !== 'default')
  .map(([status, answer]) => contents(`Answers ${status}`, answer, entry))}
</section>`;
}

function parameterList(parameters: NonNullable<Operation['parameters']>) {
  return html`<ul class="parameters">${parameters.map(
    (one) =>
      html`<li><code>${one.name}</code> in the ${one.in === 'path' ? 'address' : one.in}${one.required ? ', required' : ''}: <code>${schemaText(one.schema ?? {})}</code>${usual(one.schema)}</li>`,
  )}</ul>`;
}

const usual = (schema?: JsonSchema) =>
  schema?.default === undefined ? '' : html`, default ${JSON.stringify(schema.default)}`;

function contents(what: string, { content, description }: Content, entry: Entry) {
  const said = description === undefined ? '' : `: ${description}`;
  return html`<p><b>${what}</b>${said}</p>
${Object.entries(content ?? {}).map(([type, { schema = {} }]) =>
  schema.$ref === undefined
    ? html`<p class="type">${type}</p>${block(schema, `${what}, ${entry.operation.summary}, ${type}`)}`
    : html`<p class="type">${type}, <code>${schemaText(schema)}</code></p>`,
)}`;
}

const block = (schema: JsonSchema, label: string) =>
  html`<pre tabindex="0" role="group" aria-label="${label}">${schemaText(schema)}</pre>`;

const tagOf = ({ operation }: Entry) => operation.tags?.[0] ?? 'Other';
const slug = (text: string) => text.toLowerCase().replace(/[^a-z0-9]+/g, '-');
const anchor = ({ method, path }: Entry) => slug(`${method} ${path}`);

const STYLE = `
:root { color-scheme: light dark; --ink: light-dark(#1d2126, #e6e8ea); --paper: light-dark(#fbfaf8, #16181b);
  --faint: light-dark(#565d66, #a6adb5); --panel: light-dark(#f0eeea, #202429); --link: light-dark(#0b5a83, #7fc4ec); }
* { box-sizing: border-box; }
body { margin: 0; font: 16px/1.55 system-ui, sans-serif; color: var(--ink); background: var(--paper); }
header, main, nav { max-width: 62rem; margin: 0 auto; padding: 1rem; }
nav { display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: 0 1.5rem; }
nav h2 { font-size: 1rem; margin: .75rem 0 .25rem; }
nav ul, .parameters { margin: 0; padding-left: 1.1rem; }
h1 small { font-size: 1rem; font-weight: 400; color: var(--faint); }
h3 { margin: 2rem 0 .25rem; }
a { color: var(--link); }
.address, .type { margin: .25rem 0; }
.type + pre { margin-top: 0; }
section > p { margin: .5rem 0 0; }
.type, .remark { color: var(--faint); }
pre { background: var(--panel); padding: .75rem 1rem; border-radius: 6px; overflow-x: auto; margin: .25rem 0 1rem;
  font: 14px/1.5 ui-monospace, monospace; }
code { font-family: ui-monospace, monospace; overflow-wrap: anywhere; }
`;
