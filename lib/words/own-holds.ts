import { seatGroundWords } from '../core/options/ground-words'
import type { OwnHold } from '../core/options/own-holds'
import { formatThou } from '../core/units/format-figure'
import { orderText } from './route'

/** Why a head went on hold by itself, for the owner who decides. */
export function ownHoldText(hold: OwnHold): string {
  switch (hold.code) {
    case 'count-short':
      return `Arrival from ${orderText(hold.order)}: something is still there.`
    case 'count-wrong':
      return `Arrival from ${orderText(hold.order)}: wrong head or wrong part.`
    case 'damaged':
      return `Arrival from ${orderText(hold.order)}: damaged.`
    case 'cut-through': {
      const by = formatThou(hold.byIn)
      const line = `the sealing line of the ${hold.port} seat`
      const how = by === '0 thou' ? `reached ${line}` : `gone through ${line} by ${by}`
      return `The cut has ${how} (${seatGroundWords(hold.ground)}). Do not cut again without a new seat.`
    }
  }
}
