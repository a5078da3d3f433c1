import fc from 'fast-check'
import { it, vi } from 'vitest'
import { testDatabase, describeOnBoth } from '../setup/database'
import { inLongRun } from '../setup/long-run'
import { monday, openShop } from '../use-cases/jobs/counter-shop'
import { openMeasuredShop } from '../use-cases/release/whole-job'
import { correct, decide, hold, takeBack, tick, tickAgain, waive } from './history/bench-deeds'
import { book, invoice, pay, plan, price, receive, release, send, unpay, vendorId } from './history/counter-deeds'
import { emptyModel, type Deed, type HeadModel, type JobModel, type Model } from './history/model'
import { RealShop, tally } from './history/shop'

vi.setConfig({ testTimeout: inLongRun ? 3_600_000 : 120_000 })

type Choose = (head: HeadModel, job: JobModel, which: number, model: Model) => Deed | null | Promise<Deed | null>

/** Each as often as it stands here. */
const deeds: readonly (readonly [number, string, Choose])[] = [
  [8, 'tick', (head) => tick(head)],
  [1, 'tick again', (head) => tickAgain(head)],
  [2, 'take back', (head) => takeBack(head)],
  [2, 'correct', (head, _job, which) => correct(head, which)],
  [3, 'plan', (_head, job, which) => plan(job, which % 4 === 3)],
  [1, 'hold', (head) => hold(head)],
  [2, 'decide', (head) => decide(head)],
  [4, 'waive', (head) => waive(head)],
  [1, 'send', (head, _job, _which, model) => send(model, head)],
  [1, 'receive', (_head, _job, which, { orders }) => (orders.length > 0 ? receiveOne(orders, which) : null)],
  [2, 'release', (head) => release(head)],
  [2, 'price', (_head, job, which) => price(job, 10 + (which % 50))],
  [2, 'invoice', (_head, job, which, model) => invoice(model, job, which % 5 === 4)],
  [2, 'pay', (_head, job, which, model) => pay(model, job, which % 2 === 0)],
  [1, 'void', (_head, job) => unpay(job)],
]

function receiveOne(orders: Model['orders'], which: number): Deed | null {
  const order = orders[which % orders.length]
  return order ? receive(order) : null
}

type Command = fc.AsyncCommand<Model, RealShop>

const command = (name: string, run: (model: Model, shop: RealShop) => Promise<void>): Command => ({
  check: () => true,
  run,
  toString: () => name,
})

/** One in four is sent three times at once, as by two tabs and a tablet. */
const timesOf = (which: number): number => (which % 4 === 0 ? 3 : 1)

const any = fc.nat(999)
const aDeed = ([weight, name, choose]: (typeof deeds)[number]) => ({
  weight,
  arbitrary: fc.tuple(any, any).map(([at, which]) =>
    command(`${name} ${at} ${which}`, async (model, shop) => {
      const head = model.heads[at % Math.max(1, model.heads.length)]
      if (!head) return
      const deed = await choose(head, head.job, which, model)
      if (deed) await shop.carryOut(model, deed, timesOf(at + which))
    }),
  ),
})

/**
 * Works a head through to its release: what can be ticked is ticked, what is then missing is waived. `outside`: its flat cut
 * is sent out and comes back.
 */
async function finish(model: Model, shop: RealShop, head: HeadModel, outside: boolean): Promise<void> {
  const goesThrough = async (deed: Deed | null) => deed !== null && (await shop.carryOut(model, deed, 1))
  for (let steps = 0; steps < mostSteps; steps++) {
    if (head.openHolds.length > 0) await goesThrough(decide(head))
    if (head.job.plans === 0) await goesThrough(plan(head.job, false))
    const next = await tick(head)
    if (outside && next?.what === 'tick flat-cut' && (await goesThrough(send(model, head)))) {
      await goesThrough(receiveOne(model.orders, model.orders.length - 1))
    } else if (!(await goesThrough(next)) && !(await goesThrough(await waive(head)))) break
  }
  await goesThrough(await release(head))
}

/** A whole route is some thirty steps. */
const mostSteps = inLongRun ? 60 : 10

const others = [
  {
    weight: 1,
    arbitrary: any.map((at) =>
      command(`book ${at}`, async (model, shop) => void (await shop.carryOut(model, book(model), timesOf(at)))),
    ),
  },
  { weight: 2, arbitrary: any.map((at) => command(`send ${at} again`, (model, shop) => shop.sendAgain(model, at))) },
  {
    weight: 2,
    arbitrary: any.map((at) =>
      command(`finish ${at}`, async (model, shop) => {
        const head = model.heads[at % Math.max(1, model.heads.length)]
        if (head) await finish(model, shop, head, at % 2 === 0)
      }),
    ),
  },
  { weight: 1, arbitrary: fc.constant(command('crash', (_model, shop) => shop.crash())) },
  {
    weight: 1,
    arbitrary: fc
      .integer({ min: -72, max: 72 })
      .map((hours) => command(`clock ${hours} h`, async (_model, shop) => shop.setClock(hours))),
  },
]

const histories = fc.commands([fc.oneof(...deeds.map(aDeed), ...others)], {
  maxCommands: inLongRun ? 60 : 20,
  size: 'max',
})

async function freshShop(provider: Parameters<typeof testDatabase>[0]) {
  const database = await testDatabase(provider)
  await openShop(database)
  await openMeasuredShop(database)
  const words = { phone: '', email: '', address: '', services: '' }
  await database.client.vendor.create({
    data: { id: vendorId, name: 'Tarn Grinding', ...words, boxHeads: 4, createdAt: monday },
  })
  return database
}

describeOnBoth('any history of a shop', (_open, provider) => {
  it('leaves on record what the deeds that went through say, and nothing else', async () => {
    tally.clear()
    const rounds = inLongRun ? Number(process.env.BRASSTAG_HISTORIES ?? 40) : provider === 'sqlite' ? 2 : 1
    await fc.assert(
      fc.asyncProperty(histories, async (commands) => {
        const database = await freshShop(provider)
        const model = emptyModel()
        const real = new RealShop(database)
        try {
          await real.carryOut(model, book(model), 1)
          await fc.asyncModelRun(() => ({ model, real }), commands)
          await real.lookAtAll(model)
        } finally {
          await database.close()
        }
      }),
      { numRuns: rounds, endOnFailure: true, verbose: 1 },
    )
    if (inLongRun) process.stdout.write(`${provider}, ${rounds} histories: ${JSON.stringify([...tally])}\n`)
  })
})
