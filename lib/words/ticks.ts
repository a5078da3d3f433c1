import type { Refusal } from '../core/errors'
import type { InTheWay, Owing, ReleaseWarning, TickRefused, TickWarning } from '../core/route/codes'
import { capital, listed, lower, readingOwed } from '../core/route/words'
import { answerText, figure } from './lacks'
import { orderText } from './route'
import { secondCheckText } from './second-check'

/** Why nothing can be done at a head that was bought and has not come. */
export const onOrderText = 'This head is on order and not here yet. Receive it and tag it first.'

/** Why nothing can be done at a head that a vendor has. */
export const awayText = (order: Parameters<typeof orderText>[0]): string =>
  `This head is out at ${orderText(order)}. Receive it first.`

const otherText: Readonly<Record<Owing['others'][number], string>> = {
  plan: 'there is no cut plan yet',
  release: 'it has not been released',
}

/** "Measure chambers: chamber 3 and chamber 4 have no cc yet." */
function owingText({ label, readings, first, parts, others }: Owing): string {
  const sentences = [
    ...readings.map(({ kind, points }) => readingOwed(kind, points)),
    ...first.map((step) => `${lower(step)} comes first`),
    ...parts.map((what) => `${what} not received`),
    ...others.map((other) => otherText[other]),
  ]
  return `${label}: ${sentences.join('; ')}.`
}

/** Why a step may not be ticked, as whoever pressed the button is told. */
export function tickRefusal(refused: TickRefused): Refusal {
  switch (refused.code) {
    case 'off-route':
      return { code: 'wrong-state', message: 'This step is not on the route of this head.' }
    case 'ticked':
      return {
        code: 'wrong-state',
        message: `${refused.label} is already ticked. If it was redone, take the tick back first.`,
      }
    case 'hold':
      return {
        code: 'hold',
        message: `This head is on hold: ${listed(refused.reasons)}. The owner must decide first.`,
      }
    case 'on-order':
      return { code: 'wrong-state', message: onOrderText }
    case 'away':
      return { code: 'wrong-state', message: awayText(refused.order) }
    case 'send-out': {
      const { label, order } = refused
      const message = `${label} is on the order to ${orderText(order)}. Send the head out, or take this step off the order.`
      return { code: 'wrong-state', message }
    }
    case 'not-back':
      return { code: 'wrong-state', message: `${capital(orderText(refused.order))} is not back yet.` }
    case 'stop': {
      const answers = listed(refused.stops.map(({ kind, answer }) => answerText(kind, answer)))
      return { code: 'hold', message: `${capital(answers)}. Put the head on hold and get the owner.` }
    }
    case 'second-check':
      return { code: 'wrong-state', message: secondCheckText(refused) }
    case 'owed':
      return { code: 'owed', message: owingText(refused), needs: refused.needs }
  }
}

/** What whoever ticks should know: "Crack check usually comes first. It is not done yet." */
export const tickWarningText = ({ code, label }: TickWarning): string =>
  code === 'ticked'
    ? `${label} is already ticked.`
    : `${capital(lower(label))} usually comes first. It is not done yet.`

/** The name of a way to what stands in the way: "Seat work comes first". */
export function inTheWayText(what: InTheWay): string {
  switch (what.code) {
    case 'off-route':
      return 'See the route of this head'
    case 'on-order':
      return 'See what is on order'
    case 'plan':
      return 'Make the cut plan'
    case 'release':
      return 'Release this head'
    case 'second-check':
      return 'Second check at the mill'
    case 'hold':
      return `On hold: ${what.reason}`
    case 'order':
      return capital(orderText(what.order))
    case 'stop':
      return capital(answerText(what.kind, what.answer))
    case 'readings':
      return capital(readingOwed(what.kind, what.points))
    case 'first':
      return `${capital(what.label)} comes first`
    case 'parts':
      return capital(what.what)
  }
}

/** What the owner should know before releasing. */
export const releaseWarningText = ({ whose, worstCc, matchCc }: ReleaseWarning): string =>
  `The chambers of ${whose === 'pair' ? 'the pair' : 'this head'} do not match: one is ${figure(worstCc)} cc from the mean (match ${matchCc}).`
