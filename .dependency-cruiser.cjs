// A table: folder → what of ours, and which packages, it may import. Everything else is refused.
const ours = {
  'api/domain': [],
  'api/contract': ['api/domain'],
  'api/figures': ['api/domain'],
  'api/intake': ['api/domain'],
  'api/export': ['api/domain', 'api/contract', 'api/figures'],
  'api/services': ['api/domain', 'api/contract', 'api/intake', 'api/figures', 'api/export', 'db'],
  'api/routes': ['api/contract', 'api/services', 'api/problem.ts'],
  db: [],
  web: ['api/domain', 'api/contract', 'api/figures'],
};
const packages = {
  'api/domain': ['ml-matrix', 'ml-pca', '@stdlib'],
  'api/figures': ['d3', '@types/d3'],
  db: ['drizzle-orm', 'postgres', '@electric-sql', 'proper-lockfile', '@types/proper-lockfile'],
};
const any = (names) => `^(${names.map((n) => n.replace(/[.]/g, '[.]')).join('|')})(/|$)`;
const folderRules = Object.entries(ours).map(([folder, allowed]) => ({
  name: `${folder}-imports`,
  severity: 'error',
  comment: `${folder} may import of ours only: ${[folder, ...allowed].join(', ')}`,
  from: { path: `^${folder}/` },
  to: { path: '^(api|db|web|scripts|tests)/', pathNot: any([folder, ...allowed]) },
}));
const packageRules = Object.entries(packages).map(([folder, allowed]) => ({
  name: `${folder}-packages`,
  severity: 'error',
  comment: `${folder} may import these packages only: ${allowed.join(', ')}`,
  from: { path: `^${folder}/` },
  to: {
    path: 'node_modules/',
    pathNot: `node_modules/(${allowed.join('|')})(/|$)`,
  },
}));

const { builtinModules } = require('node:module');

const DRAWN_ANYWHERE = 'share-figures|prepared|pdf';

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', from: {}, to: { couldNotResolve: true } },
    {
      name: 'web-takes-only-the-type-of-the-app',
      severity: 'error',
      from: { path: '^web/' },
      to: { path: '^api/app[.]ts$', dependencyTypesNot: ['type-only'] },
    },
    {
      name: 'pure-folders-use-no-node',
      severity: 'error',
      from: { path: '^(api/domain|api/figures|api/contract|web)/' },
      to: { dependencyTypes: ['core'] },
    },
    ...folderRules.map((rule) =>
      rule.name === 'web-imports'
        ? {
            ...rule,
            // A share saved as one file has no service to draw its files: it does so itself, by the same code.
            to: {
              ...rule.to,
              pathNot: `${rule.to.pathNot}|^api/app[.]ts$|^api/export/(${DRAWN_ANYWHERE})[.]ts$`,
            },
          }
        : rule,
    ),
    {
      name: 'what-is-drawn-anywhere-uses-no-node',
      severity: 'error',
      from: { path: `^api/export/(${DRAWN_ANYWHERE})[.]ts$` },
      // Whatever way it takes: only paths, not kinds, can be asked for at a distance.
      to: { path: `^(node:)?(${builtinModules.join('|')})$`, reachable: true },
    },
    ...packageRules,
  ],
  options: {
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^dist/' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
