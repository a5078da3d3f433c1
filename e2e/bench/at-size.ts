import { median, type Figure } from '../../tests/bench/measure'
import { headOfTag, msOf, said, shopOfSize, type SizedShop } from './shop-of-size'

const small = { heads: 1_000, readings: 50 }
const large = { heads: 100_000, readings: 50 }
/** A page is asked for so often, or for so long: whichever is over first. */
const mostTurns = 40
const longestMs = 10_000
const firstThrownAway = 4

/** The pages that a shop has open all day, by what stands ready in it. */
function pagesOf({ folder, heads }: SizedShop): Readonly<Record<string, string>> {
  const { number, tag } = heads['Delia Thorn'] ?? { number: '', tag: '' }
  const { headId, visitId } = headOfTag(folder, tag)
  return {
    'queue of a station': '/stations/measuring-bench',
    'station with all its steps': '/api/stations/measuring-bench',
    step: `/stations/measuring-bench/heads/${visitId}?step=chambers`,
    'step as the station app asks for it': `/api/stations/measuring-bench/step?visit=${visitId}&step=chambers`,
    counter: '/counter',
    Away: '/away',
    find: '/find?q=thorn',
    job: `/jobs/${number}`,
    head: `/heads/${headId}`,
    customers: '/customers',
    'Back room': '/back-room',
  }
}

type Asker = { readonly shop: SizedShop; readonly cookie: string; readonly pages: Readonly<Record<string, string>> }

const askerOf = async (shop: SizedShop): Promise<Asker> => ({
  shop,
  cookie: await shop.cookieOf('orla'),
  pages: pagesOf(shop),
})

/** How much longer the large shop's answer takes. Both are asked in turn, so that what else the machine does slows both. */
async function growth(of: Asker, to: Asker, name: string): Promise<{ ratio: number; ms: number }> {
  const ask = ({ shop, cookie, pages }: Asker): Promise<number> => msOf(`${shop.url}${pages[name] ?? ''}`, cookie)
  const [before, after]: [number[], number[]] = [[], []]
  const began = performance.now()
  for (let turn = 0; turn < mostTurns; turn += 1) {
    const [few, many] = [await ask(of), await ask(to)]
    if (turn < firstThrownAway) continue
    before.push(few)
    after.push(many)
    if (performance.now() - began > longestMs) break
  }
  return { ratio: median(after) / median(before), ms: median(after) }
}

/** What the database takes to find, before the shop is opened: nobody else has the file. */
async function findFigures(folder: string): Promise<Figure[]> {
  const took = JSON.parse(await said('tests/bench/find-ways.ts', [], folder)) as [asked: string, ms: number][]
  const slowest = took.reduce((most, one) => (one[1] > most[1] ? one : most), ['', 0])
  const rows: [string, number][] = [
    ['half of 30 ways to ask Find', median(took.map(([, ms]) => ms))],
    [`the slowest of them, “${slowest[0]}”`, slowest[1]],
  ]
  return rows.map(([what, measured]) => {
    const work = `in the database, of 100,000 heads: ${what}`
    return { work, measured, unit: 'ms', goal: '≤ 10', met: measured <= 10 }
  })
}

/** 100,000 heads with 5 million readings against 1,000 heads: each page's answer. Needs a build. */
export async function sizeFigures(): Promise<Figure[]> {
  const shops: SizedShop[] = []
  try {
    const finds: Figure[] = []
    shops.push(await shopOfSize(small.heads, small.readings))
    const last = async (folder: string): Promise<void> => void finds.push(...(await findFigures(folder)))
    shops.push(await shopOfSize(large.heads, large.readings, last))
    const [few, many] = shops
    if (!few || !many) return []
    const [of, to] = [await askerOf(few), await askerOf(many)]
    const figures: Figure[] = [loaded(many), ...finds]
    for (const name of Object.keys(of.pages)) {
      const { ratio, ms } = await growth(of, to, name)
      const work = `${name}, 100,000 heads against 1,000 (${ms.toFixed(0)} ms)`
      figures.push({ work, measured: ratio, unit: '×', goal: '≤ 1.3', met: ratio <= 1.3 })
    }
    return figures
  } finally {
    for (const shop of shops) await shop.stop()
  }
}

const loaded = ({ loadedS }: SizedShop): Figure => ({
  ...{ work: 'loading 100,000 heads and 5 million readings', measured: loadedS, unit: 's' },
  ...{ goal: '< 180', met: loadedS < 180 },
})
