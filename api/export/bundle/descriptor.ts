import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { ComparisonSource } from '../../contract/figure.ts';
import { TABLES, type TableName } from './tables.ts';

/** One file of a bundle by its path, with what it holds. */
export interface BundleFile {
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly title: string;
  readonly type: string;
  readonly table?: TableName;
}
export interface DescriptorAbout {
  readonly name: string;
  readonly note: string;
  readonly version: string;
  readonly createdAt: string;
  readonly sources: readonly ComparisonSource[];
}

export const hashOf = (bytes: Uint8Array): string =>
  `sha256:${createHash('sha256').update(bytes).digest('hex')}`;

/** The descriptor of a Data Package (Frictionless Data, version 1): every file with its size, hash and schema. */
export function describeBundle(files: readonly BundleFile[], about: DescriptorAbout) {
  const sources = about.sources
    .filter(({ source, doi }) => source !== '' || doi !== '')
    .map(({ name, source, doi }) => ({
      title: source === '' ? name : `${name}: ${source}`,
      ...(doi === '' ? {} : { path: `https://doi.org/${doi}` }),
    }));
  return {
    profile: 'data-package',
    name: slug(about.name),
    title: about.name,
    ...(about.note === '' ? {} : { description: about.note }),
    created: about.createdAt,
    ...(sources.length > 0 ? { sources } : {}),
    generator: `Nearsherd ${about.version}`,
    resources: files.map(resource),
  };
}

const slug = (text: string) =>
  text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'placement';

function resource({ path, bytes, title, type, table }: BundleFile) {
  const file = { path, title, mediatype: type, bytes: bytes.length, hash: hashOf(bytes) };
  const name = slug(path);
  if (table === undefined) return { profile: 'data-resource', name, ...file };
  return {
    profile: 'tabular-data-resource',
    name: table,
    ...file,
    encoding: 'utf-8',
    dialect: DIALECT,
    schema: schemaOf(table),
  };
}

/** Said although it is the standard's own default: readers are known to guess where nothing is said. */
const DIALECT = { delimiter: ',', lineTerminator: '\r\n', quoteChar: '"', doubleQuote: true, header: true };

function schemaOf(name: TableName) {
  const { fields, key, refersTo } = TABLES[name];
  const foreignKeys = Object.entries(refersTo).map(([column, resource]) => ({
    fields: column,
    reference: { resource, fields: TABLES[resource].key! },
  }));
  return {
    fields: fields.map((field) => ({ name: field.name, type: field.type })),
    missingValues: [''],
    ...(key === undefined ? {} : { primaryKey: key }),
    ...(foreignKeys.length > 0 ? { foreignKeys } : {}),
  };
}

/** What a reader needs of a descriptor: which files there must be, each with its size and hash. */
export const descriptor = z.object({
  resources: z
    .array(
      z.object({
        name: z.string(),
        path: z.string(),
        bytes: z.number().int(),
        hash: z.string().regex(/^sha256:[0-9a-f]{64}$/),
      }),
    )
    .min(1),
});
