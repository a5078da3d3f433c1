import { posix } from 'node:path'
import reactHooks from 'eslint-plugin-react-hooks'
import tseslint from 'typescript-eslint'

// ─── Who may import what: one table, one way ───────────────────────────────────────────────────────────────────────
// The globs of the layers are disjoint: a second block that matches the same file would replace the first.

const libParts = [
  'core',
  'words',
  'drawing',
  'schemas',
  'data',
  'dossier',
  'papers',
  'use-cases',
  'pdf',
  'web',
  'demo',
  'cli',
  'env',
]
const rootParts = ['app', 'prisma', 'tests', 'e2e']
const web = ['next', 'react', 'react-dom', 'next-auth']
const database = ['@prisma', 'prisma', 'better-sqlite3', 'pg']

/** `lib` and `root`: what of ours may be imported. `packages`: the only ones allowed, or `without`: all but these. */
const layers = [
  { name: 'core', files: ['lib/core/**'], lib: [], packages: [] },
  { name: 'words', files: ['lib/words/**'], lib: ['core', 'words'], packages: [] },
  { name: 'drawing', files: ['lib/drawing/**'], lib: ['core', 'words', 'drawing'], packages: ['d3-shape'] },
  { name: 'schemas', files: ['lib/schemas/**'], lib: ['core', 'schemas'], packages: ['zod'] },
  {
    name: 'pdf',
    files: ['lib/pdf/**'],
    lib: ['core', 'words', 'drawing', 'pdf'],
    packages: ['pdf-lib', '@pdf-lib/fontkit', 'uqr', 'node:.*'],
  },
  { name: 'data', files: ['lib/data/**'], lib: ['core', 'data', 'env'], root: ['prisma'], without: web },
  {
    name: 'dossier',
    files: ['lib/dossier/**'],
    lib: ['core', 'words', 'data', 'dossier'],
    without: [...web, ...database],
  },
  {
    name: 'papers',
    files: ['lib/papers/**'],
    lib: ['core', 'words', 'drawing', 'data', 'dossier', 'pdf', 'papers'],
    without: [...web, ...database],
  },
  {
    name: 'use-cases',
    files: ['lib/use-cases/**'],
    lib: ['core', 'words', 'drawing', 'schemas', 'data', 'dossier', 'papers', 'pdf', 'use-cases'],
    without: [...web, ...database],
  },
  {
    name: 'demo',
    files: ['lib/demo/**'],
    lib: ['core', 'words', 'drawing', 'schemas', 'data', 'dossier', 'use-cases', 'demo'],
    without: [...web, ...database],
  },
  {
    name: 'web',
    files: ['lib/web/**', 'lib/env.ts', 'proxy.ts', 'instrumentation.ts'],
    lib: ['core', 'words', 'schemas', 'data', 'use-cases', 'pdf', 'web', 'env'],
    without: database,
  },
  {
    name: 'cli',
    files: ['lib/cli/**'],
    lib: ['core', 'words', 'data', 'use-cases', 'demo', 'cli', 'env'],
    root: ['prisma'],
    without: web,
  },
  {
    name: 'app',
    files: ['app/**'],
    lib: ['core', 'words', 'drawing', 'schemas', 'use-cases', 'pdf', 'web'],
    root: ['app'],
    without: [...database, 'next/link'],
  },
  {
    name: 'tests',
    files: ['tests/**'],
    ignores: ['tests/setup/**'],
    lib: libParts,
    root: ['app', 'tests'],
    without: database,
  },
  { name: 'test set-up', files: ['tests/setup/**'], lib: libParts, root: ['prisma', 'tests'], without: web },
  {
    name: 'browser tests',
    files: ['e2e/**'],
    lib: ['core', 'words', 'demo', 'cli'],
    root: ['e2e', 'tests'],
    without: [...web, ...database],
  },
]

const anyOf = (names) => `(?:${names.join('|')})(?:/|$)`
const upwards = '(?:\\./)?(?:\\.\\./)+'

/** What a layer must not import, as regular expressions of the module's name: by alias and relative alike. */
function forbidden({ name, lib, root = [], packages, without }) {
  const otherLib = libParts.filter((part) => !lib.includes(part))
  const otherRoot = rootParts.filter((part) => !root.includes(part))
  const patterns = []
  if (otherLib.length > 0) patterns.push(`^(?:@/lib/|${upwards}(?:lib/)?)${anyOf(otherLib)}`)
  if (otherRoot.length > 0) patterns.push(`^(?:@/|${upwards})${anyOf(otherRoot)}`)
  if (packages) patterns.push(`^(?!\\.|@/${packages.map((entry) => `|${entry}(?:/|$)`).join('')})`)
  if (without) patterns.push(`^${anyOf(without)}`)
  if (name === 'core') patterns.push('^@/')
  return patterns
}

/** Selectors cannot hold a slash inside a regular expression. */
const dynamicImport = (pattern, message) => ({
  selector: `ImportExpression[source.value=/${pattern.replaceAll('/', '\\x2F')}/]`,
  message,
})

/** The core computes the same from the same: no clock, no chance, nothing of the machine it runs on. */
const pureCore = {
  'no-restricted-globals': [
    'error',
    ...['process', 'globalThis', 'window', 'document', 'navigator', 'fetch', 'crypto', 'performance'],
    ...['setTimeout', 'setInterval', 'setImmediate', 'queueMicrotask', 'localStorage', 'console', 'Buffer'],
  ],
  'no-restricted-properties': [
    'error',
    { object: 'Date', property: 'now', message: 'The core has no clock: take the time as a parameter.' },
    { object: 'Math', property: 'random', message: 'The core has no chance in it.' },
  ],
}
const noClock = [
  { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: 'The core has no clock.' },
  { selector: 'CallExpression[callee.name="Date"]', message: 'The core has no clock.' },
]

/** A use case writes through the transaction it was given; what it reads is a function of lib/data. */
const reads = 'findMany|findUnique|findUniqueOrThrow|findFirst|findFirstOrThrow|groupBy|aggregate|count'
const noReads = [
  {
    selector: `CallExpression[callee.property.name=/^(${reads})$/]`,
    message: 'Reads stand in lib/data: give this one a name there.',
  },
]

function layerBlock(layer) {
  const message = `${layer.name} does not import this: see the layers in DEVELOPERS.md.`
  const patterns = forbidden(layer)
  const isCore = layer.name === 'core'
  return {
    name: `layer: ${layer.name}`,
    files: layer.files.map((glob) => (glob.endsWith('**') ? `${glob}/*.{ts,tsx,mjs}` : glob)),
    ignores: layer.ignores ?? [],
    rules: {
      'no-restricted-imports': ['error', { patterns: patterns.map((regex) => ({ regex, message })) }],
      'no-restricted-syntax': [
        'error',
        ...patterns.map((pattern) => dynamicImport(pattern, message)),
        ...(isCore ? noClock : []),
        ...(layer.name === 'use-cases' ? noReads : []),
      ],
      ...(isCore ? pureCore : {}),
    },
  }
}

// ─── Parts that run in the browser ─────────────────────────────────────────────────────────────────────────────────

const serverOnly = new RegExp(
  `^(?:@/lib/|${upwards}lib/)${anyOf(['data', 'dossier', 'papers', 'use-cases', 'web', 'pdf', 'demo', 'cli', 'env'])}`,
)

/** A file that says 'use client' takes nothing of the server but types, and the page's own actions. */
const clientParts = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { server: 'A part that runs in the browser does not import {{ name }}.' },
  },
  create(context) {
    const isClient = context.sourceCode.ast.body.some((node) => node.directive === 'use client')
    if (!isClient) return {}
    const check = (node) => {
      const isType = node.importKind === 'type' || node.exportKind === 'type'
      const name = node.source?.value
      if (!isType && typeof name === 'string' && serverOnly.test(name)) {
        context.report({ node, messageId: 'server', data: { name } })
      }
    }
    return {
      ImportDeclaration: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      ImportExpression: check,
    }
  },
}

// ─── Rooms of use cases ────────────────────────────────────────────────────────────────────────────────────────────

const roomOf = (file) => /(?:^|\/)lib\/use-cases\/([^/]+)(?:\/|$)/.exec(file)?.[1]

/** One noun's use case does not import another's: what two of them need is of the dossier, the data or the core. */
const ownRoom = {
  meta: {
    type: 'problem',
    schema: [],
    messages: { other: 'A use case of {{ own }} does not import one of {{ other }}.' },
  },
  create(context) {
    const file = context.filename.replaceAll('\\', '/')
    const own = roomOf(file)
    const check = (node) => {
      const name = node.source?.value
      if (typeof name !== 'string') return
      const other = roomOf(name.startsWith('.') ? posix.join(posix.dirname(file), name) : name)
      if (other !== undefined && other !== own) context.report({ node, messageId: 'other', data: { own, other } })
    }
    return {
      ImportDeclaration: check,
      ExportNamedDeclaration: check,
      ExportAllDeclaration: check,
      ImportExpression: check,
    }
  },
}

const house = { rules: { 'client-parts': clientParts, 'own-room': ownRoom } }

export default tseslint.config(
  {
    ignores: [
      '.next/**',
      'node_modules/**',
      'prisma/generated/**',
      'public/**',
      'next-env.d.ts',
      'data/**',
      'data-shop/**',
    ],
  },
  // A rule that can be switched off in a comment is not held.
  { linterOptions: { noInlineConfig: true, reportUnusedDisableDirectives: 'error' } },
  ...tseslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx,mjs}'],
    rules: {
      eqeqeq: 'error',
      'no-var': 'error',
      'prefer-const': 'error',
      'no-console': ['error', { allow: ['error', 'warn'] }],
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/ban-ts-comment': [
        'error',
        { 'ts-expect-error': true, 'ts-ignore': true, 'ts-nocheck': true, 'ts-check': false },
      ],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
    },
  },
  {
    // A promise that nobody waits for is a write that nobody knows the end of.
    files: ['lib/**/*.ts', 'app/**/*.{ts,tsx}', 'tests/**/*.ts', 'e2e/**/*.ts'],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-floating-promises': 'error',
      '@typescript-eslint/await-thenable': 'error',
    },
  },
  {
    files: ['app/**/*.{ts,tsx}'],
    plugins: { 'react-hooks': reactHooks, house },
    rules: {
      'react-hooks/rules-of-hooks': 'error',
      'react-hooks/exhaustive-deps': 'error',
      'house/client-parts': 'error',
    },
  },
  {
    files: ['lib/use-cases/*/**/*.ts'],
    plugins: { house },
    rules: { 'house/own-room': 'error' },
  },
  ...layers.map(layerBlock),
)
