import { ESLint } from 'eslint'
import tseslint from 'typescript-eslint'
import { beforeAll, describe, expect, it } from 'vitest'

let eslint: ESLint

beforeAll(() => {
  // These snippets are not files of the project, so what needs their types stays out of it.
  eslint = new ESLint({ overrideConfig: tseslint.configs.disableTypeChecked })
})

async function complaints(filePath: string, code: string): Promise<string[]> {
  const [result] = await eslint.lintText(code, { filePath })
  return (result?.messages ?? []).map((message) => message.ruleId ?? message.message)
}

const imports = (name: string) => `import { x } from '${name}'\nexport const y = x\n`
const loads = (name: string) => `export const y = import('${name}')\n`

/** File, and what it must not import. */
const refused: readonly (readonly [string, string])[] = [
  ['lib/core/cut/a.ts', 'zod'],
  ['lib/core/cut/a.ts', 'node:fs'],
  ['lib/core/cut/a.ts', 'react'],
  ['lib/core/cut/a.ts', '@/lib/data/db'],
  ['lib/core/cut/a.ts', '@/lib/core/errors'],
  ['lib/core/cut/a.ts', '../../data/db'],
  ['lib/core/cut/a.ts', '../../schemas/job'],
  ['lib/core/cut/a.ts', '../../../app/page'],
  ['lib/core/a.ts', './../data/db'],
  ['lib/words/a.ts', '../schemas/job'],
  ['lib/words/a.ts', '@/lib/data/db'],
  ['lib/words/a.ts', '../drawing/mark'],
  ['lib/words/a.ts', 'react'],
  ['lib/core/cut/a.ts', '../../words/route'],
  ['lib/data/a.ts', '@/lib/words/route'],
  ['lib/schemas/a.ts', '@/lib/words/route'],
  ['lib/drawing/a.ts', 'react'],
  ['lib/drawing/a.ts', '../data/db'],
  ['lib/drawing/a.ts', '@/lib/schemas/job'],
  ['lib/schemas/a.ts', '@/lib/data/db'],
  ['lib/schemas/a.ts', '../use-cases/jobs/book-job'],
  ['lib/schemas/a.ts', 'next/headers'],
  ['lib/pdf/a.ts', '@/lib/data/db'],
  ['lib/pdf/a.ts', '../use-cases/jobs/book-job'],
  ['lib/pdf/a.ts', 'next'],
  ['lib/data/a.ts', '@/lib/use-cases/jobs/book-job'],
  ['lib/data/gate/a.ts', '../../web/log'],
  ['lib/data/a.ts', 'next/cache'],
  ['lib/data/a.ts', '@/lib/dossier/question'],
  ['lib/dossier/a.ts', '@/lib/use-cases/jobs/book-job'],
  ['lib/dossier/a.ts', '@/prisma/generated/sqlite/client'],
  ['lib/dossier/a.ts', '@/lib/schemas/job'],
  ['lib/dossier/a.ts', '@/lib/pdf/spec-sheet'],
  ['lib/papers/a.ts', '../use-cases/jobs/book-job'],
  ['lib/core/a.ts', '../dossier/dossier'],
  ['lib/use-cases/jobs/a.ts', '@/lib/web/log'],
  ['lib/use-cases/jobs/a.ts', '../../web/log'],
  ['lib/use-cases/jobs/a.ts', '@prisma/client'],
  ['lib/use-cases/jobs/a.ts', '@/prisma/generated/sqlite/client'],
  ['lib/use-cases/jobs/a.ts', '../../../prisma/generated/sqlite/client'],
  ['lib/use-cases/jobs/a.ts', 'next/headers'],
  ['lib/demo/a.ts', '@prisma/client'],
  ['lib/demo/a.ts', '@/app/page'],
  ['lib/web/a.ts', '@prisma/client'],
  ['lib/web/a.ts', '@/app/page'],
  ['lib/cli/a.ts', '@/lib/web/log'],
  ['app/(staff)/counter/page.tsx', '@/lib/data/db'],
  ['app/(staff)/counter/page.tsx', '../../lib/data/db'],
  ['app/(staff)/counter/page.tsx', '@/prisma/generated/sqlite/client'],
  ['app/(staff)/counter/page.tsx', 'better-sqlite3'],
  ['app/(staff)/counter/page.tsx', 'next/link'],
  ['app/(staff)/counter/page.tsx', '@/lib/demo/seed'],
  ['tests/use-cases/a.test.ts', '@/prisma/generated/sqlite/client'],
  ['tests/data/a.test.ts', 'better-sqlite3'],
  ['e2e/a.spec.ts', '@/lib/data/db'],
]

describe('an import against the layers is refused', () => {
  it.each(refused)('%s: %s', async (file, name) => {
    expect(await complaints(file, imports(name))).toContain('no-restricted-imports')
    expect(await complaints(file, loads(name))).toContain('no-restricted-syntax')
  })
})

const allowed: readonly (readonly [string, string])[] = [
  ['lib/core/cut/a.ts', '../errors'],
  ['lib/core/cut/a.ts', './plan'],
  ['lib/words/a.ts', '@/lib/core/errors'],
  ['lib/words/a.ts', './route'],
  ['lib/pdf/a.ts', '@/lib/words/route'],
  ['lib/use-cases/jobs/a.ts', '@/lib/words/route'],
  ['lib/demo/a.ts', '@/lib/words/route'],
  ['lib/web/a.ts', '@/lib/words/refusals'],
  ['app/(staff)/counter/page.tsx', '@/lib/words/route'],
  ['lib/drawing/a.ts', '@/lib/core/errors'],
  ['lib/drawing/a.ts', 'd3-shape'],
  ['lib/schemas/a.ts', 'zod'],
  ['lib/pdf/a.ts', 'pdf-lib'],
  ['lib/data/a.ts', '@/prisma/generated/sqlite/client'],
  ['lib/data/a.ts', '@prisma/adapter-pg'],
  ['lib/dossier/a.ts', '@/lib/data/visits'],
  ['lib/use-cases/jobs/a.ts', '@/lib/data/visits'],
  ['lib/use-cases/jobs/a.ts', '@/lib/dossier/question'],
  ['lib/dossier/a.ts', '@/lib/core/errors'],
  ['lib/papers/a.ts', '@/lib/dossier/dossier'],
  ['lib/papers/a.ts', '@/lib/pdf/spec-sheet'],
  ['lib/web/a.ts', 'next/headers'],
  ['app/(staff)/counter/page.tsx', '@/lib/use-cases/jobs/book-job'],
  ['tests/setup/a.ts', '@/prisma/generated/sqlite/client'],
  ['tests/use-cases/a.test.ts', '@/lib/use-cases/jobs/book-job'],
]

describe('an import along the layers is not', () => {
  it.each(allowed)('%s: %s', async (file, name) => {
    expect(await complaints(file, imports(name))).toEqual([])
  })
})

describe('a use case', () => {
  const file = 'lib/use-cases/jobs/a.ts'

  it.each(['../visits/tick-step', '@/lib/use-cases/visits/tick-step', './../visits/tick-step'])(
    'does not import another noun’s: %s',
    async (name) => {
      for (const code of [imports(name), loads(name), `export * from '${name}'\n`]) {
        expect(await complaints(file, code)).toContain('house/own-room')
      }
    },
  )

  it('imports those of its own noun', async () => {
    for (const name of ['./see-job', '@/lib/use-cases/jobs/see-job']) {
      expect(await complaints(file, imports(name))).toEqual([])
    }
  })

  it.each([
    'findMany',
    'findUnique',
    'findUniqueOrThrow',
    'findFirst',
    'findFirstOrThrow',
    'groupBy',
    'aggregate',
    'count',
  ])('leaves reading to lib/data: %s', async (method) => {
    const code = `export const x = (tx: { job: { ${method}(): void } }) => tx.job.${method}()\n`
    expect(await complaints(file, code)).toEqual(['no-restricted-syntax'])
    expect(await complaints('lib/data/a.ts', code)).toEqual([])
  })

  it('writes through the transaction it was given', async () => {
    const code = 'export const x = (tx: { job: { updateMany(): void } }) => tx.job.updateMany()\n'
    expect(await complaints(file, code)).toEqual([])
  })
})

describe('the core', () => {
  it.each([
    'export const now = () => Date.now()\n',
    'export const now = () => new Date()\n',
    'export const chance = () => Math.random()\n',
    'export const where = () => process.env.HOME\n',
    'export const ask = () => fetch("x")\n',
    'export const wait = (f: () => void) => setTimeout(f, 1)\n',
  ])('has no clock, chance or machine: %s', async (code) => {
    expect(await complaints('lib/core/cut/a.ts', code)).toHaveLength(1)
  })

  it('may take a time as it is given', async () => {
    expect(await complaints('lib/core/cut/a.ts', 'export const at = (ms: number) => new Date(ms)\n')).toEqual([])
  })
})

describe('a part that runs in the browser', () => {
  const client = (line: string) => `'use client'\n${line}\nexport const y = x\n`

  it.each(['data/visits', 'dossier/dossier', 'papers/print-spec', 'use-cases/jobs/book-job', 'web/log', 'env'])(
    'does not import lib/%s',
    async (name) => {
      const found = await complaints('app/(staff)/counter/form.tsx', client(`import { x } from '@/lib/${name}'`))
      expect(found).toContain('house/client-parts')
    },
  )

  it('imports core, schemas and the action beside it', async () => {
    for (const name of ['@/lib/core/errors', '@/lib/schemas/job', './actions']) {
      expect(await complaints('app/(staff)/counter/form.tsx', client(`import { x } from '${name}'`))).toEqual([])
    }
  })
})

describe('what cannot be talked out of', () => {
  it('any', async () => {
    expect(await complaints('lib/web/a.ts', 'export const x = (y: any) => y\n')).toContain(
      '@typescript-eslint/no-explicit-any',
    )
  })

  it('a comment that switches a rule off', async () => {
    const found = await complaints(
      'lib/web/a.ts',
      '/* eslint-disable @typescript-eslint/no-explicit-any */\nexport const x = (y: any) => y\n',
    )
    expect(found).toContain('@typescript-eslint/no-explicit-any')
    expect(found).toHaveLength(2)
  })

  it.each(['@ts-ignore', '@ts-expect-error: because', '@ts-nocheck'])('%s', async (words) => {
    const found = await complaints('lib/web/a.ts', `// ${words}\nexport const x = 1\n`)
    expect(found).toContain('@typescript-eslint/ban-ts-comment')
  })
})
