import { randomUUID } from 'node:crypto'
import { median, type Figure } from '../../tests/bench/measure'
import { msOfInsert } from '../../tests/setup/raw-insert'
import { msOf, said, shopOfSize, type SizedShop } from './shop-of-size'

const ticks = 40
const atOnce = 8
const forMs = 3_000
const passes = 4

async function msOfTick(url: string, cookie: string, deed: object): Promise<number> {
  const sentAt = new Date().toISOString()
  const body = JSON.stringify({ sentAt, operations: [{ ...deed, id: randomUUID(), takenAt: sentAt }] })
  const began = performance.now()
  const headers = { cookie, 'content-type': 'application/json', origin: url }
  const answer = await fetch(`${url}/api/operations`, { method: 'POST', headers, body })
  const text = await answer.text()
  const ms = performance.now() - began
  if (answer.status !== 200 || !text.includes('"state":"done"'))
    throw new Error(`A tick was not taken: ${text.slice(0, 400)}`)
  return ms
}

async function tickFigure(shop: SizedShop, deeds: readonly object[]): Promise<Figure> {
  const cookie = await shop.cookieOf('dov')
  const insertMs = msOfInsert(shop.folder)
  const empty: number[] = []
  const tick: number[] = []
  for (const deed of deeds) {
    empty.push(await msOf(`${shop.url}/sw.js`, cookie))
    tick.push(await msOfTick(shop.url, cookie, deed))
  }
  const [tickMs, emptyMs] = [median(tick.slice(10)), median(empty.slice(10))]
  const ratio = tickMs / (emptyMs + insertMs)
  const parts = `${tickMs.toFixed(1)} ms; route ${emptyMs.toFixed(1)}, insert ${insertMs.toFixed(1)}`
  return {
    work: `tick with readings, against the smallest route and one raw durable insert (${parts})`,
    ...{ measured: ratio, unit: '×', goal: '≤ 5', met: ratio <= 5 },
  }
}

/** Answers a second, several askers at once. */
async function rateOf(url: string, cookie: string): Promise<number> {
  const until = performance.now() + forMs
  let answers = 0
  const ask = async () => {
    while (performance.now() < until) {
      await msOf(url, cookie)
      answers++
    }
  }
  await Promise.all(Array.from({ length: atOnce }, ask))
  return answers / (forMs / 1000)
}

async function queueFigure(shop: SizedShop): Promise<Figure> {
  const cookie = await shop.cookieOf('dov')
  const ratios: number[] = []
  for (let pass = 0; pass < passes; pass++) {
    const empty = await rateOf(`${shop.url}/account`, cookie)
    const queue = await rateOf(`${shop.url}/stations/measuring-bench`, cookie)
    if (pass > 0) ratios.push(queue / empty)
  }
  const ratio = median(ratios)
  return {
    work: 'queue page, answers a second, against a page of the same server that asks nothing (own account)',
    ...{ measured: ratio, unit: '×', goal: '≥ 0.35', met: ratio >= 0.35 },
  }
}

/** A tick and a queue, against the least that the same server can do. Needs a build. */
export async function deedFigures(): Promise<Figure[]> {
  let deeds: object[] = []
  const shop = await shopOfSize(0, 0, async (folder) => {
    deeds = JSON.parse(await said('tests/bench/fill-ticks.ts', [String(ticks)], folder)) as object[]
  })
  try {
    return [await tickFigure(shop, deeds), await queueFigure(shop)]
  } finally {
    await shop.stop()
  }
}
