import type { OrderName, PastWhat, Reason, Wait, Why } from '../core/route/codes'
import { causeWords } from '../core/route/do-again'
import { ownConditionWords } from '../core/route/own-conditions'
import type { StepId } from '../core/route/step-ids'
import { cutWords, listed } from '../core/route/words'

const inches = (valueIn: number): string => `${valueIn.toFixed(3)} in`

/** "Northgate Grinding, order 26-014". Rows from before the number was kept by itself have both in `vendor`. */
export const orderText = ({ vendor, number }: OrderName): string =>
  number === '' ? vendor : `${vendor}, order ${number}`

const workNames: Partial<Readonly<Record<StepId, string>>> = {
  'seat-work': 'seat work',
  guides: 'guide work',
  inserts: 'insert work',
  weld: 'welding',
  straighten: 'straightening',
  port: 'port work',
  'open-chamber': 'chamber work',
  springs: 'springs',
}

const figures: Readonly<Record<PastWhat, string>> = {
  'intake-side': 'the intake side moves by',
  'metal-removed': 'removed since new:',
  cut: 'the cut of',
  'clean-up': 'a clean-up of',
  'ptv-loss': 'piston-to-valve clearance is reduced by',
}

type PlainWhy = Exclude<
  Why['code'],
  | 'cut'
  | 'sent-out'
  | 'comes-back'
  | 'after-work'
  | 'flat-left'
  | 'angle-manifold'
  | 'past-limit'
  | 'ptv-left'
  | 'own'
  | 'said'
>

const plainWhy: Readonly<Record<PlainWhy, string>> = {
  ordered: 'ordered',
  'every-head': 'every head',
  'used-head': 'used head',
  overheated: 'the head was overheated',
  'break-through': 'the cutter may have broken through',
  'valves-renewed': 'valves renewed',
  'flat-deck': 'flat deck: the valves sit in it',
  target: 'a target was given',
  'class-limit': 'a class limit was given',
  'engine-known': 'the engine is known',
  'chamber-too-small': 'the target is larger than the chamber',
  'flat-ordered': 'a flat cut is ordered',
  'flat-part': 'flat cut',
  'cam-in-head': 'the cam is in the head',
  'seat-check-failed': 'the seat check failed',
  'edge-left': 'seat work left an edge',
  'clean-up-thickness': 'the clean-up changes the thickness',
  'cut-by-maker': 'cut by its maker, not measured yet',
  'after-machining': 'after machining',
  'came-assembled': 'the head came assembled',
  'assembly-ordered': 'assembly is ordered',
}

/** Why a step is on the route: "removed since new: 0.064 in, over the shop’s limit of 0.060 in"; '' for null. */
export function whyText(why: Why | null): string {
  if (why === null) return ''
  switch (why.code) {
    case 'cut':
      return cutWords[why.kind]
    case 'sent-out':
      return `sent out to ${orderText(why.order)}`
    case 'comes-back':
      return `back from ${orderText(why.order)}`
    case 'after-work':
      return `after ${listed([...new Set(why.steps.map((step) => workNames[step] ?? 'machining'))])}`
    case 'flat-left':
      return `${inches(why.leftIn)} of the flat part is left for us`
    case 'angle-manifold':
      return why.isKnown
        ? 'an angle cut under one manifold'
        : 'an angle cut; check whether one manifold spans the heads'
    case 'past-limit':
      return `${figures[why.what]} ${inches(why.valueIn)}, over the shop’s limit of ${inches(why.limitIn)}`
    case 'ptv-left':
      return `${inches(why.leftIn)} of piston-to-valve clearance is left (limit ${inches(why.limitIn)})`
    case 'own':
      return ownConditionWords(why.condition, why.limitIn)
    case 'said':
      return why.text
    default:
      return plainWhy[why.code]
  }
}

/** Why a step must be done again, or is no longer needed; '' for null. */
export function reasonText(reason: Reason | null): string {
  if (reason === null) return ''
  switch (reason.code) {
    case 'not-rinsed':
      return 'machining was done after it'
    case 'more-readings':
      return 'more readings needed'
    case 'seat-check-failed':
      return 'the seat check after it failed'
    case 'not-asked':
      return 'no longer ordered'
    case 'undone':
      return causeWords[reason.cause]
    case 'angle-short':
      return `the angle part is ${inches(reason.shortIn)} short by the corners`
    case 'rejected':
      return `rejected: ${reason.why}`
    case 'plan-now':
      return `not needed: the plan is now ${cutWords[reason.kind]}`
    case 'said':
      return reason.text
  }
}

/** What a step waits for: a step’s label, the parts, "the owner’s decision on the hold". */
export function waitText(wait: Wait): string {
  switch (wait.code) {
    case 'step':
      return wait.label
    case 'parts':
      return wait.what
    case 'hold':
      return 'the owner’s decision on the hold'
    case 'arrival':
      return 'arrival (on order)'
    case 'plan':
      return 'the cut plan'
    case 'release':
      return 'release'
    case 'away':
      return orderText(wait.order)
    case 'send-out':
      return `sending out to ${orderText(wait.order)}`
    case 'said':
      return wait.text
  }
}
