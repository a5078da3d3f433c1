import { expect, it } from 'vitest'
import { isDay } from '@/lib/core/shop/calendar'
import { proposePromiseSchema } from '@/lib/schemas/promise'
import { proposePromise } from '@/lib/use-cases/jobs/propose-promise'
import { describeOnBoth } from '@/tests/setup/database'
import { book, counter, machinist, monday, openShop, refusalOf } from '../jobs/counter-shop'

const asked = (ordered: string) =>
  proposePromiseSchema.parse({
    ...{ source: 'customer', used: '1', cameAssembled: '0', overheated: '0', urgent: '0', ordered },
  })

describeOnBoth('the promise that is proposed', (open) => {
  it('is a working day after today, later with more work and with other heads before it', async () => {
    await openShop(await open())
    const little = await proposePromise(counter, asked('seat-work'), monday)
    expect(isDay(little.promiseOn) && little.promiseOn > '2026-03-02' && little.middleOn <= little.promiseOn).toBe(true)
    expect([0, 6]).not.toContain(new Date(`${little.promiseOn}T00:00:00Z`).getUTCDay())
    expect(little.from).toBe('from settings')
    const much = await proposePromise(counter, asked('seat-work,guides,flat-cut,springs,assemble,leak'), monday)
    expect(much.promiseOn > little.promiseOn).toBe(true)
    for (let job = 0; job < 20; job++) await book()
    const behind = await proposePromise(counter, asked('seat-work'), monday)
    expect(behind.promiseOn > little.promiseOn).toBe(true)
    expect((await refusalOf(proposePromise(machinist, asked('seat-work'), monday))).code).toBe('not-allowed')
  })
})
