import { setCornerInset } from '@/lib/use-cases/settings/set-corner-inset'
import { seedCastings } from './castings'
import { ShopClock } from './drive/clock'
import { seedEstimates } from './estimates'
import * as bench from './jobs/bench-jobs'
import * as cuts from './jobs/cut-jobs'
import { DemoJob, type DemoGround } from './jobs/demo-job'
import * as flat from './jobs/flat-deck-jobs'
import * as outside from './jobs/outside-jobs'
import * as seats from './jobs/seat-jobs'
import type { Act, Story } from './jobs/story'
import { seedLogo } from './logo'
import { demoCorners } from './corners'
import { seedPrices, seedTaxes } from './prices'
import { seedRecord } from './record'
import { demoShop, seedInstruments, seedShop } from './shop'
import { seedVendors } from './vendors'
import { seedShopWanted } from './wanted'

/** The shop opened its books so many working days before today: before the first job. */
const openedDaysAgo = 45

/** Fills an empty database with the demo: the shop, and jobs in every state, told up to now. */
export async function seedDemo(now: Date): Promise<void> {
  const clock = new ShopClock(demoShop.timeZone, now)
  const opened = clock.ago(openedDaysAgo, '08:00')
  const staff = await seedShop(opened)
  await seedRecord(opened)
  await seedLogo(staff.orla, opened)
  const { version } = await setCornerInset(staff.orla, demoCorners, { now: opened })
  await seedShopWanted(staff.orla, version, opened)
  const taxes = await seedTaxes(staff.orla, opened)
  await seedPrices(staff.orla, taxes, opened)
  const ground: DemoGround = {
    staff,
    taxes,
    castings: await seedCastings(staff.orla, opened),
    vendors: await seedVendors(staff.orla, opened),
    instruments: await seedInstruments(staff.orla, now),
  }
  await live(ground, now)
  await seedEstimates(staff.tamsin, ground.castings, clock.ago(1, '16:20'))
}

const stories: readonly Story[] = [
  cuts.flatPairAtMill,
  cuts.cleanUpOnly,
  cuts.portAndFlow,
  cuts.boughtInCut,
  cuts.boughtOnOrder,
  cuts.secondCut,
  flat.flatDeckCut,
  flat.fourValveSeats,
  flat.cleanUpAsked,
  outside.angledHeadReleased,
  outside.angledPairLate,
  outside.angledPairPartlyBack,
  outside.insertsOut,
  bench.expectedPair,
  bench.justIn,
  bench.beingMeasured,
  bench.waitingForValves,
  bench.findingOpen,
  bench.cutTooDeep,
  bench.crackedReturned,
  bench.crackedScrapped,
  seats.seatsReleased,
]

const timeOf = ({ when }: Act, clock: ShopClock): Date =>
  'minutesAgo' in when ? clock.minutesAgo(when.minutesAgo) : clock.ago(when.daysAgo, when.time)

type Told = { readonly act: Act; readonly job: DemoJob; readonly at: Date }

/** Lives all stories at once, act by act in the order of their times, as a shop does. */
async function live(ground: DemoGround, now: Date): Promise<void> {
  const newJob = () => new DemoJob(ground, new ShopClock(demoShop.timeZone, now))
  const first = newJob()
  const jobs: (readonly [Story, DemoJob])[] = [
    [cuts.flatPairGone, first],
    [bench.comeback(() => first.head(0).headId), newJob()],
    ...stories.map((story) => [story, newJob()] as const),
  ]
  const told = jobs.flatMap(([story, job]) => story(job).map((act): Told => ({ act, job, at: timeOf(act, job.clock) })))
  told.sort((a, b) => a.at.getTime() - b.at.getTime())
  for (const { act, job, at } of told) {
    job.clock.goTo(at)
    await act.what()
  }
}
