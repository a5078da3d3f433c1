import { median, type Figure } from '../../tests/bench/measure'
import { headOfTag, msOf, shopOfSize, type SizedShop } from './shop-of-size'

const small = { heads: 1_000, readings: 50 }
const large = { heads: 100_000, readings: 50 }
const passes = 4
const asked = 15

/** The pages that a shop has open all day, by what stands ready in it. */
function pagesOf({ folder, heads }: SizedShop): Readonly<Record<string, string>> {
  const { number, tag } = heads['Delia Thorn'] ?? { number: '', tag: '' }
  const { headId, visitId } = headOfTag(folder, tag)
  return {
    'queue of a station': '/stations/measuring-bench',
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

async function pass({ shop, cookie, pages }: Asker, name: string): Promise<number> {
  const times: number[] = []
  for (let time = 0; time < asked; time++) times.push(await msOf(`${shop.url}${pages[name] ?? ''}`, cookie))
  return median(times)
}

/** One after the other in turn, the first pass thrown away: how much longer the large shop's answer takes. */
async function growth(of: Asker, to: Asker, name: string): Promise<{ ratio: number; ms: number }> {
  const ratios: number[] = []
  const times: number[] = []
  for (let at = 0; at < passes; at++) {
    const [before, after] = [await pass(of, name), await pass(to, name)]
    if (at === 0) continue
    ratios.push(after / before)
    times.push(after)
  }
  return { ratio: median(ratios), ms: median(times) }
}

/** 100,000 heads with 5 million readings against 1,000 heads: each page's answer. Needs a build. */
export async function sizeFigures(): Promise<Figure[]> {
  const shops: SizedShop[] = []
  try {
    for (const { heads, readings } of [small, large]) shops.push(await shopOfSize(heads, readings))
    const [few, many] = shops
    if (!few || !many) return []
    const [of, to] = [await askerOf(few), await askerOf(many)]
    const figures: Figure[] = [loaded(many)]
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
