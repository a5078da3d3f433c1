import type { ShopSettings } from '@/lib/core/shop/settings'
import { wantedFigures, wantedKeys, type KeptFigure, type WantedFigures } from '@/lib/core/wanted/figures'
import type { Wanted, WantedPlace } from '@/lib/core/wanted/wanted-of'
import { wantedOnCasting, wantedOnJob, wantedOnVisit } from '@/lib/data/stored/wanted'
import type { VisitRecord } from '@/lib/data/visit-records'

/** What each place says that the benches should work to on one head. */
export type WantedByPlace = Readonly<Record<WantedPlace, WantedFigures>>

/** What is said of this head, of its job, of its casting, by the shop. */
export const wantedByPlace = (visit: VisitRecord, settings: ShopSettings, chambers: number): WantedByPlace => ({
  head: wantedOnVisit.read(visit.wanted, visit.id),
  job: { ...wantedOnJob.read(visit.job.wanted, visit.job.id), ...ofEngine(visit.job.engine) },
  casting: visit.head.casting ? wantedOnCasting.read(visit.head.casting.wanted, visit.head.casting.id) : {},
  shop: wantedOfShop(settings, chambers),
})

/** The lift is typed with the engine: it is the job's. */
function ofEngine(engine: VisitRecord['job']['engine']): WantedFigures {
  const keys = wantedKeys.filter((key) => wantedFigures[key].shop === 'engine')
  return Object.fromEntries(
    (engine?.figures ?? [])
      .filter(({ key }) => keys.some((one) => one === key))
      .map(({ key, value, text, unit }) => [key, { value, text, unit }]),
  )
}

const inInches = (value: number): KeptFigure => ({ value, text: String(value), unit: 'in' })

/** The shop's own figures, and those of its limits that a head, a job or a casting may depart from. */
export const wantedOfShop = (settings: ShopSettings, chambers: number): WantedFigures => ({
  ...settings.wanted,
  runoutMostIn: inInches(settings.runoutLimitIn),
  straightAcrossMostIn: inInches(settings.straightAcrossIn),
  straightAlongMostIn: inInches(settings.straightAlongPerCylinderIn * chambers),
})

/** The limits of the shop as they hold for this head: where its job asks for other ones, those. */
export function limitsOfHead(settings: ShopSettings, wanted: Wanted, chambers: number): ShopSettings {
  const along = wanted.straightAlongMostIn
  const isOwn = along !== undefined && along.from !== 'shop'
  return {
    ...settings,
    runoutLimitIn: wanted.runoutMostIn?.value ?? settings.runoutLimitIn,
    straightAcrossIn: wanted.straightAcrossMostIn?.value ?? settings.straightAcrossIn,
    straightAlongPerCylinderIn: isOwn ? along.value / chambers : settings.straightAlongPerCylinderIn,
  }
}
