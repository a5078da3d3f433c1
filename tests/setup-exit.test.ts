import { expect, it } from 'vitest'
import { elsewhereRun } from './setup/elsewhere'

it('a failed run that used PostgreSQL ends as failed', { timeout: 240_000 }, async () => {
  const { code, said } = await elsewhereRun('tests/setup/postgres-once.ts', [])
  expect(said).toBe('')
  expect(code).toBe(3)
})
