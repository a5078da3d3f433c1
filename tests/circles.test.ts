import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { gitFiles } from './counted/git-files'
import { circlesOf, importsOf, root } from './counted/house'

const code = new Map(
  gitFiles(root)
    .filter((file) => /^(?:app|lib)\/.*\.(?:tsx?|mjs)$/.test(file) || file === 'proxy.ts')
    .map((file) => [file, readFileSync(join(root, file), 'utf8')] as const),
)

/** The circles of the house once this line stands in that file too. */
const circlesWith = (file: string, line: string): string[][] =>
  circlesOf(importsOf(new Map([...code, [file, `${line}\n${code.get(file) ?? ''}`]])))

describe('no files import each other in a circle', () => {
  it('in app and lib, types included', () => {
    expect(code.size).toBeGreaterThan(500)
    expect(circlesOf(importsOf(code))).toEqual([])
  })

  it.each([
    ['a value by a relative path', `import { contextOf } from './context-of'`],
    ['a type by a relative path', `import type { StepRow } from './steps'`],
    ['a type by the alias', `import type { StepRow } from '@/lib/core/route/steps'`],
    ['a name handed on', `export { stepTable } from './steps'`],
    ['a file loaded later', `export const later = () => import('./steps')`],
  ])('one that is planted is found: %s', (_, line) => {
    const circles = circlesWith('lib/core/route/keys.ts', line)
    expect(circles).toHaveLength(1)
    expect(circles[0]).toContain('lib/core/route/keys.ts')
    expect(circles[0]).toContain('lib/core/route/steps.ts')
  })
})
