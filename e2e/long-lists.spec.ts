import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { plainSqlite } from '../tests/setup/plain-sqlite'
import { signInAtForm } from './person'
import { startServer, type Server } from './server'

/** A shop with more castings than a list is read through for. The file has a shop of its own. */

const idOf = (n: number): string => `00000000-0000-7000-8000-000000000${n}`

let server: Server
test.beforeAll(async () => {
  const folder = process.env.BRASSTAG_E2E_LISTS ?? ''
  plainSqlite(`file:${join(folder, 'brasstag.db')}`, (file) => {
    const add = file.prepare(
      `INSERT INTO "CastingRecord" ("id", "name", "nameLower", "material", "chamberCount", "chamberShape", "deepEdge",
        "note", "createdAt") VALUES (?, ?, ?, 'iron', 4, 'closed', 'exhaust', '', ?)`,
    )
    for (let n = 100; n < 260; n += 1) add.run(idOf(n), `Zell ${n}`, `zell ${n}`, new Date().toISOString())
  })
  server = await startServer('demo', folder)
})
test.afterAll(() => server.stop())

test('a casting beyond the first hundred is found by typing, and stays when the list is shown whole again', async ({
  page,
}) => {
  await signInAtForm(page, 'tamsin', server.url)
  await page.goto(`${server.url}/counter/book`)
  const casting = page.getByLabel('Casting', { exact: true })
  await expect(casting.locator('option', { hasText: 'Zell 245' })).toHaveCount(0)
  await page.getByLabel('Casting: part of the name').fill('zell 245')
  await casting.selectOption({ label: 'Zell 245' })
  await page.getByLabel('Casting: part of the name').fill('')
  await expect(casting.locator('option:checked')).toHaveText('Zell 245')
})

test('the cut bench opens with the casting that its address names', async ({ page }) => {
  await signInAtForm(page, 'dov', server.url)
  await page.goto(`${server.url}/cut-bench?casting=${idOf(245)}`)
  await expect(page.getByLabel('Casting', { exact: true }).locator('option:checked')).toHaveText('Zell 245')
})
