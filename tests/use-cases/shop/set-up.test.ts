import { existsSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { beforeEach, describe, expect, test } from 'vitest'
import { newOwnerCode } from '@/lib/cli/first-owner'
import { writeMode } from '@/lib/cli/shop-mode'
import { personBySignIn } from '@/lib/data/people'
import { passwordFits } from '@/lib/data/passwords'
import { setUpShopSchema } from '@/lib/schemas/shop'
import { needsSetUp, setUpShop } from '@/lib/use-cases/shop/set-up-shop'
import { testDatabase, type TestDatabase } from '@/tests/setup/database'

const now = new Date('2026-03-02T15:00:00Z')
const password = 'the first one through the door'
const shop = {
  name: 'Thornback Heads',
  address: '1 Quay Street',
  phone: '555-0131',
  timeZone: 'Europe/Vienna',
  locale: 'en-GB',
  currency: 'eur',
  paper: 'a4' as const,
}
const owner = { name: 'Maud Ellery', signIn: 'Maud', password }
const input = (code: string) => setUpShopSchema.parse({ code, shop, owner, again: password })

let database: TestDatabase
let code: string
beforeEach(async () => {
  database = await testDatabase()
  await writeMode(database.client, 'shop', now)
  code = newOwnerCode(database.folder)
})

const codeFile = () => join(database.folder, 'owner-code.sha256')
const everything = async () => ({
  shop: await database.client.shop.findMany(),
  people: await database.client.person.findMany(),
})

describe('the one-time code', () => {
  test('makes the shop and its owner', async () => {
    expect(await needsSetUp()).toBe(true)
    expect(await setUpShop(input(code), { now })).toEqual({ signIn: 'maud' })
    expect(await needsSetUp()).toBe(false)
    const person = await personBySignIn('maud')
    expect(person).toMatchObject({ name: 'Maud Ellery', roles: 'owner', grants: '' })
    expect(await passwordFits(person?.passwordHash ?? null, password)).toBe(true)
    const row = await database.client.shop.findUniqueOrThrow({ where: { id: 1 } })
    expect(row).toMatchObject({ ...shop, currency: 'EUR', currencyExponent: 2, mode: 'shop' })
  })

  test('is taken in small letters and without its hyphens', async () => {
    await setUpShop(input(` ${code.toLowerCase().replaceAll('-', '')} `), { now })
    expect(await needsSetUp()).toBe(false)
  })

  test('wrong: nothing is made, and the right one still works', async () => {
    const before = await everything()
    await expect(setUpShop(input('AAAA-AAAA-AAAA'), { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { code: expect.any(String) } },
    })
    expect(await everything()).toEqual(before)
    await setUpShop(input(code), { now })
  })

  test('works once: no second owner by it, nor by a newer one', async () => {
    await setUpShop(input(code), { now })
    expect(existsSync(codeFile())).toBe(false)
    const before = await everything()
    const second = { ...owner, signIn: 'other' }
    const again = (another: string) =>
      setUpShop(setUpShopSchema.parse({ code: another, shop, owner: second, again: password }), { now })
    await expect(again(code)).rejects.toMatchObject({ refusal: { code: 'not-found' } })
    await expect(again(newOwnerCode(database.folder))).rejects.toMatchObject({
      refusal: { code: 'not-found' },
    })
    expect(await everything()).toEqual(before)
  })

  test('sent twice at once makes one owner', async () => {
    const answers = await Promise.allSettled([
      setUpShop(input(code), { now }),
      setUpShop(setUpShopSchema.parse({ code, shop, owner: { ...owner, signIn: 'other' }, again: password }), { now }),
    ])
    expect(answers.map(({ status }) => status).toSorted()).toEqual(['fulfilled', 'rejected'])
    expect(await database.client.person.count()).toBe(1)
  })

  test('is on disk only as a hash, and for nobody else on the machine', () => {
    expect(statSync(codeFile()).mode & 0o777).toBe(0o600)
  })

  test('a password that everybody tries leaves the code unspent', async () => {
    const weak = { ...input(code), owner: { ...owner, signIn: 'maud', password: 'Password123' } }
    await expect(setUpShop(weak, { now })).rejects.toMatchObject({
      refusal: { code: 'invalid', fields: { 'owner.password': expect.any(String) } },
    })
    await setUpShop(input(code), { now })
  })
})

test('a shop without a code file has no way in', async () => {
  const { folder } = await testDatabase()
  expect(existsSync(join(folder, 'owner-code.sha256'))).toBe(false)
  await expect(setUpShop(input(code), { now })).rejects.toMatchObject({ refusal: { code: 'invalid' } })
})

describe('what is asked', () => {
  const fieldsOf = (more: object) => {
    const parsed = setUpShopSchema.safeParse({ code, shop: { ...shop, ...more }, owner, again: password })
    return parsed.success ? [] : parsed.error.issues.map((issue) => issue.path.join('.'))
  }
  test.each([
    [{ timeZone: 'Atlantis/Sunken' }, 'shop.timeZone'],
    [{ timeZone: '' }, 'shop.timeZone'],
    [{ locale: 'not a locale' }, 'shop.locale'],
    [{ currency: 'EURO' }, 'shop.currency'],
    [{ name: ' ' }, 'shop.name'],
  ])('%j is refused at its field', (more, path) => {
    expect(fieldsOf(more)).toEqual([path])
  })

  test('the password twice the same', () => {
    const parsed = setUpShopSchema.safeParse({ code, shop, owner, again: `${password} ` })
    expect(parsed.error?.issues.map((issue) => issue.path.join('.'))).toEqual(['again'])
  })

  test('a currency without decimals keeps none', async () => {
    await setUpShop(setUpShopSchema.parse({ code, shop: { ...shop, currency: 'JPY' }, owner, again: password }), {
      now,
    })
    // ISO 4217 gives the yen no minor unit.
    expect((await database.client.shop.findUniqueOrThrow({ where: { id: 1 } })).currencyExponent).toBe(0)
  })
})
