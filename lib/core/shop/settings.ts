import { defaultExpectedLimits, type ExpectedLimits } from '../expected/limits'
import type { RouteSettings } from '../route/types'
import { defaultRouteSettings } from '../route/settings'
import { usualValveLists, type ValveLists } from '../valve-sheet/lists'
import { usualCalendar, type ShopCalendar } from './open-calendar'
import type { CornerInset } from '../straightness/corner-inset'
import type { WantedFigures } from '../wanted/figures'

/** Everything the owner may set; stored whole, a new version at each change. */
export type ShopSettings = RouteSettings &
  ExpectedLimits & {
    /** Standard deviation of one cc reading, where a chamber was read once. */
    readonly ccRepeatabilityCc: number
    readonly buretteDivisionCc: number
    readonly depthSettingErrorThou: number
    readonly betweenHeadPart: number
    readonly vendorMarginCc: number
    /** How far a finished cut may be off what was wanted, or off its maker's marks. */
    readonly cutToleranceIn: number
    readonly angleCautionDeg: number
    readonly angleLimitDeg: number
    readonly flowRepeatabilityPart: number
    readonly ptvLeastIntakeIn: number
    readonly ptvLeastExhaustIn: number
    readonly turnaroundDays: number
    /** Until the shop's own record says: working days a step, calendar days of the waits. */
    readonly stepDays: number
    readonly answerDays: number
    readonly partsDays: number
    readonly holdDays: number
    /** A tablet that nobody touches for so long goes back to the rack of time cards. */
    readonly tabletIdleMinutes: number
    /** Where the corners of a head are touched, when its casting's record does not say; null: asked at first use. */
    readonly cornerInset: CornerInset | null
    /** What benches work to where neither head nor job nor casting says otherwise. */
    readonly wanted: WantedFigures
    /** Shims and seat angles to be picked from at the valves. */
    readonly valveLists: ValveLists
    /** Days of the week on which the shop works, and its holidays. */
    readonly calendar: ShopCalendar
  }

/** The limits among them, as against the tables of steps and what was asked at first use. */
export type ShopLimits = Omit<ShopSettings, 'rules' | 'cornerInset' | 'wanted' | 'valveLists' | 'calendar'>

/** What a shop starts with. Each is common practice unless the line says otherwise; the owner changes them. */
export const defaultShopSettings: ShopSettings = {
  ...defaultRouteSettings,
  ...defaultExpectedLimits,
  ccRepeatabilityCc: 0.3,
  buretteDivisionCc: 0.2,
  depthSettingErrorThou: 0.5,
  betweenHeadPart: 0.03,
  vendorMarginCc: 1,
  cutToleranceIn: 0.002,
  angleCautionDeg: 0.5,
  angleLimitDeg: 1,
  flowRepeatabilityPart: 0.01,
  ptvLeastIntakeIn: 0.08, // published range 0.080–0.100, see lib/core/clearance
  ptvLeastExhaustIn: 0.1,
  turnaroundDays: 5,
  stepDays: 0.4,
  answerDays: 2,
  partsDays: 7,
  holdDays: 2,
  tabletIdleMinutes: 5,
  cornerInset: null,
  wanted: {},
  valveLists: usualValveLists,
  calendar: usualCalendar,
}
