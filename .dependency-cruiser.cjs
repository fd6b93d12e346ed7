// The direction of imports: core <- shared <- server, core <- shared <- client; server and client never meet.
// Each comment says what to do instead; tests/rules/imports.test.ts breaks every rule on purpose.
const folder = (name) => `^${name}/`;

module.exports = {
  forbidden: [
    {
      name: 'core-imports-nothing',
      comment:
        'core is pure: pass the value in as an argument, or move the code to shared, server or client.',
      severity: 'error',
      from: { path: folder('core') },
      to: { pathNot: folder('core') },
    },
    {
      name: 'shared-imports-core-at-most',
      comment: 'shared is read by both ends: only core, yjs, zod and fractional-indexing may be used in it.',
      severity: 'error',
      from: { path: folder('shared') },
      to: { pathNot: ['^(core|shared)/', '^node_modules/(yjs|zod|lib0|y-protocols|fractional-indexing)/'] },
    },
    {
      name: 'server-never-imports-client',
      comment: 'what both ends need goes into shared.',
      severity: 'error',
      from: { path: folder('server') },
      to: { path: ['^client/', '^tests/'] },
    },
    {
      name: 'client-never-imports-server',
      comment: 'what both ends need goes into shared.',
      severity: 'error',
      from: { path: folder('client') },
      to: { path: ['^server/', '^tests/'] },
    },
    {
      name: 'client-has-no-node',
      comment: 'a phone has no Node: use the web API.',
      severity: 'error',
      from: { path: folder('client'), pathNot: 'vite\\.config\\.ts$' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-cycles',
      comment: 'cut the circle: move what both need into a file of its own (type-only circles count too).',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'only-what-package-json-lists',
      comment: 'add the package to package.json, or use what is there.',
      severity: 'error',
      from: { path: '^(core|shared|server|client)/' },
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown', 'npm-dev', 'unknown'] },
    },
    {
      name: 'everything-resolves',
      comment: 'the import points at nothing.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^\\.build/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'types', 'node', 'default'],
    },
  },
};
