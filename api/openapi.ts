import type { OpenAPIHono } from '@hono/zod-openapi';
import { z } from 'zod';
import { problem } from './contract/problem.ts';
import type { Served } from './routes/route.ts';
import { VERSION } from './services/version.ts';

type SchemaObject = Parameters<OpenAPIHono['openAPIRegistry']['registerComponent']>[2];
type Served31 = ReturnType<OpenAPIHono<Served>['getOpenAPI31Document']>;
const METHODS = ['get', 'post', 'put', 'patch', 'delete'] as const;
const DESCRIPTION = `Everything the pages of Nearsherd do. Bodies and answers are JSON, except where a file goes up or a \
CSV table comes down. An error is a problem document (RFC 9457): \`detail\` states the requirement, then what was found; \
\`faults\` say where in the request. Amounts are in wt% unless a unit is given.`;

/** The OpenAPI 3.1 document, with the problem answer that every operation may give. */
export function openApiDocument(app: OpenAPIHono<Served>): Served31 {
  const { $schema: _, id: __, ...schema } = z.toJSONSchema(problem);
  app.openAPIRegistry.registerComponent('schemas', 'Problem', schema as SchemaObject);
  const document = app.getOpenAPI31Document({
    openapi: '3.1.0',
    info: { title: 'Nearsherd', version: VERSION, description: DESCRIPTION, license: { name: 'MIT' } },
    servers: [{ url: '/' }],
  });
  for (const path of Object.values(document.paths ?? {}))
    for (const method of METHODS) {
      const operation = path[method];
      if (operation) operation.responses = { ...operation.responses, default: PROBLEM };
    }
  return document;
}

const PROBLEM = {
  description: 'Why the request could not be met',
  content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } },
};
