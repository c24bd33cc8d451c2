import { html, raw } from 'hono/html';

/** What is read of a JSON schema here. */
export interface JsonSchema {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly format?: string;
  readonly description?: string;
  readonly default?: unknown;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly items?: JsonSchema;
  readonly prefixItems?: readonly JsonSchema[];
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: JsonSchema | boolean;
  readonly anyOf?: readonly JsonSchema[];
  readonly oneOf?: readonly JsonSchema[];
  readonly allOf?: readonly JsonSchema[];
}
type Html = ReturnType<typeof html>;

/** A schema in the notation of TypeScript, its names linked to their own sections. */
export function schemaText(schema: JsonSchema, indent = ''): Html {
  if (schema.$ref !== undefined) return link(schema.$ref);
  if (schema.const !== undefined) return html`${JSON.stringify(schema.const)}`;
  if (schema.enum !== undefined) return html`${schema.enum.map((one) => JSON.stringify(one)).join(' | ')}`;
  const either = schema.anyOf ?? schema.oneOf;
  if (either !== undefined)
    return joined(
      either.map((one) => schemaText(one, indent)),
      ' | ',
    );
  if (schema.allOf !== undefined)
    return joined(
      schema.allOf.map((one) => schemaText(one, indent)),
      ' & ',
    );
  const types = typeof schema.type === 'string' ? [schema.type] : (schema.type ?? ['any']);
  return joined(
    types.map((type) => ofType(type, schema, indent)),
    ' | ',
  );
}

function ofType(type: string, schema: JsonSchema, indent: string): Html {
  if (type === 'object') return objectText(schema, indent);
  if (type === 'array' && schema.prefixItems)
    return html`[${joined(
      schema.prefixItems.map((one) => schemaText(one, indent)),
      ', ',
    )}]`;
  if (type === 'array') return html`array of ${schemaText(schema.items ?? {}, indent)}`;
  return html`${schema.format === undefined ? type : `${type} (${schema.format})`}`;
}

function objectText(schema: JsonSchema, indent: string): Html {
  const inner = `${indent}  `;
  const names = Object.keys(schema.properties ?? {});
  if (names.length === 0) {
    const rest = schema.additionalProperties;
    return typeof rest === 'object' ? html`{ [name]: ${schemaText(rest, indent)} }` : html`{ }`;
  }
  const required = new Set(schema.required);
  const lines = names.map((name) => {
    const property = schema.properties![name]!;
    return html`${inner}${name}${required.has(name) ? '' : '?'}: ${schemaText(property, inner)}${remark(property)}`;
  });
  return html`{\n${joined(lines, '\n')}\n${indent}}`;
}

function remark({ description, default: usual }: JsonSchema): Html {
  const said = [
    ...(description === undefined ? [] : [description]),
    ...(usual === undefined ? [] : [`default ${JSON.stringify(usual)}`]),
  ];
  return said.length === 0 ? html`` : html`  <span class="remark">// ${said.join('; ')}</span>`;
}

function link(ref: string): Html {
  const name = ref.split('/').at(-1) ?? ref;
  return html`<a href="#schema-${name}">${name}</a>`;
}

function joined(parts: readonly Html[], between: string): Html {
  return html`${parts.map((part, index) => (index === 0 ? part : html`${raw(between)}${part}`))}`;
}
