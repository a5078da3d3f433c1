import { parse } from 'csv-parse/sync'
import { expect, it } from 'vitest'
import { importSchema } from '@/lib/schemas/customer'
import { exportCustomers } from '@/lib/use-cases/customers/export-customers'
import { importCustomers } from '@/lib/use-cases/customers/import-customers'
import { previewImport } from '@/lib/use-cases/customers/preview-import'
import { findAnything } from '@/lib/use-cases/find/find-anything'
import { describeOnBoth } from '@/tests/setup/database'
import { at, book, counter, monday, openShop, owner, refusalOf } from '../jobs/counter-shop'

/** A line of the list: all different, and each found by its own number. */
const line = (n: number): string => `Person ${n},212-555-${String(1000 + n)},p${n}@post.example,"Quay ${n}, Ohio"`

/** 500 customers with 20 bad lines among them: every twenty-fifth. Line 1 holds the headings. */
const bad = [
  ',212-555-9999,,',
  'Bad Mail,,not an address,',
  `${'x'.repeat(121)},,,`,
  'Long Phone,' + '5'.repeat(61) + ',,',
]
const list = [
  'Customer,Cell,E-mail,Address',
  ...Array.from({ length: 520 }, (_, n) => (n % 26 === 25 ? (bad[Math.floor(n / 26) % 4] ?? '') : line(n))),
].join('\r\n')
const asked = (text: string, columns: unknown = null) => importSchema.parse({ text, columns })

describeOnBoth('a list of customers', (open) => {
  it('of 500 with 20 bad lines: the bad ones are named, the others taken once', async () => {
    await openShop(await open())
    const preview = await previewImport(counter, asked(list))
    expect(preview).toMatchObject({
      columns: ['name', 'phone', 'email', 'address'],
      count: 500,
      badCount: 20,
      doubledCount: 0,
    })
    // The 26th line below the headings is line 27 of the file, and so on.
    expect(preview.bad.map((one) => one.line)).toEqual(Array.from({ length: 20 }, (_, at) => 27 + 26 * at))
    expect(new Set(preview.bad.map(({ why }) => why.split(':')[0]))).toEqual(new Set(['Name', 'E-mail', 'Phone']))
    expect(preview.first[0]).toEqual({
      line: 2,
      contact: {
        name: 'Person 0',
        phone: '212-555-1000',
        otherPhone: '',
        email: 'p0@post.example',
        address: 'Quay 0, Ohio',
        note: '',
      },
    })
    expect(await importCustomers(counter, asked(list), at(monday))).toEqual({ added: 500, bad: 20, doubled: 0 })
    const found = await findAnything(counter, { q: '212 555 1217' })
    expect(found.hits.map((hit) => (hit.kind === 'customer' ? hit.name : ''))).toEqual(['Person 217'])
    // Once more: all are known, and nothing is left to take.
    expect(await previewImport(counter, asked(list))).toMatchObject({ count: 0, doubledCount: 500, badCount: 20 })
    expect((await refusalOf(importCustomers(counter, asked(list), at(monday)))).code).toBe('invalid')
  })

  it('doubles nobody on record nor within the list; two of one name with two numbers are two', async () => {
    const { client } = await open().then(async (database) => (await openShop(database), database))
    await book({
      customer: { id: '', name: 'Ada Böhm', phone: '(212) 555-0199', email: 'ada@post.example', address: '' },
    })
    const text = [
      'Name\tPhone\tMail',
      'Somebody Else\t+1 212 555 0199\t',
      'Another\t\tADA@post.example',
      'ada  bohm\t\t',
      'Ada Bohm\t212-555-0150\t',
      'Cleo\t212-555-0151\t',
      'Cleo\t\t',
      'Dora\t2125550151\t',
    ].join('\n')
    const preview = await previewImport(counter, asked(text))
    expect(preview.doubled.map(({ line, why }) => [line, why])).toEqual([
      [2, 'On record as Ada Böhm: same phone number'],
      [3, 'On record as Ada Böhm: same e-mail address'],
      [4, 'On record as Ada Böhm: same name'],
      [7, 'Already in line 6: same name'],
      [8, 'Already in line 6: same phone number'],
    ])
    expect(await importCustomers(counter, asked(text), at(monday))).toEqual({ added: 2, bad: 0, doubled: 5 })
    expect(await client.customer.count()).toBe(3)
  })

  it('is read by the columns that were chosen, and refused in words when it is no table', async () => {
    await openShop(await open())
    const text = 'Who;Where;First\nRook;Quay 1;Ada'
    expect(await previewImport(counter, asked(text))).toMatchObject({ columns: ['', '', 'firstName'], count: 1 })
    const chosen = await previewImport(counter, asked(text, ['lastName', 'address', 'firstName']))
    expect(chosen.first[0]?.contact).toMatchObject({ name: 'Ada Rook', address: 'Quay 1' })
    expect((await refusalOf(previewImport(counter, asked(text, ['', 'address', ''])))).message).toMatch(
      /holds the name/,
    )
    expect((await refusalOf(previewImport(counter, asked('Name')))).message).toMatch(/no line/)
    const many = `Name\n${Array.from({ length: 2001 }, (_, n) => `P ${n}`).join('\n')}`
    expect((await refusalOf(previewImport(counter, asked(many)))).message).toMatch(/2001 lines/)
  })

  it('goes out as a file that a spreadsheet opens, with formulas made harmless, and comes in again as it was', async () => {
    const { client } = await open().then(async (database) => (await openShop(database), database))
    await book({
      customer: { id: '', name: '=HYPERLINK("x")', phone: '+44 20 7946 0123', email: '', address: 'Quay 1, "B"' },
    })
    const { name, text } = await exportCustomers(owner, { now: monday })
    expect(name).toBe('customers-2026-03-02.csv')
    const rows = parse(text, { bom: true }) as string[][]
    expect(rows).toEqual([
      ['Name', 'Phone', 'Other phone', 'E-mail', 'Address', 'Note', 'Since'],
      [`'=HYPERLINK("x")`, `'+44 20 7946 0123`, '', '', 'Quay 1, "B"', '', '2026-03-02'],
    ])
    expect(await previewImport(counter, asked(text))).toMatchObject({ count: 0, doubledCount: 1 })
    await client.customerText.deleteMany()
    await client.customerContact.updateMany({ data: { blankedAt: monday } })
    expect((await previewImport(counter, asked(text))).first[0]?.contact).toMatchObject({
      name: '=HYPERLINK("x")',
      phone: '+44 20 7946 0123',
    })
    expect((await refusalOf(exportCustomers(counter, { now: monday }))).code).toBe('not-allowed')
  })
})
