import { expect, it } from 'vitest'
import { closeClient, openClient } from '@/lib/data/client'
import { freshDatabase } from '../setup/database'

const idsIn = async (client: Awaited<ReturnType<typeof openClient>>) =>
  (await client.customer.findMany()).map(({ id }) => id)

it('a client whose file was closed opens the next one, and each file keeps what is its own', async () => {
  const [first, next] = [await freshDatabase('sqlite'), await freshDatabase('sqlite')]
  const createdAt = new Date('2026-03-02T08:00:00Z')

  const client = await openClient(first.url)
  await client.customer.create({ data: { id: 'of the first', createdAt } })
  await closeClient(first.url)

  const again = await openClient(next.url)
  expect(again).toBe(client)
  expect(await idsIn(again)).toEqual([])
  await again.customer.create({ data: { id: 'of the next', createdAt } })

  // The one that is open is not taken: another is made.
  const other = await openClient(first.url)
  expect(other).not.toBe(client)
  expect(await idsIn(other)).toEqual(['of the first'])
  expect(await idsIn(again)).toEqual(['of the next'])

  for (const { url, remove } of [first, next]) await closeClient(url).then(remove)
})
