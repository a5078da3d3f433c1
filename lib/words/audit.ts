import type { AuditAction } from '../core/audit/verbs'
import { fieldName, isEmpty, money, valueText, type AuditManner, type Changes } from './audit-values'

export type { AuditManner } from './audit-values'

/** What a sentence is made from. A field that it takes is not told once more below it. */
type Entry = {
  /** The name of the thing it was done to: a vendor, a person; '' where it has none. */
  readonly name: string
  /** The field as text, '' when it is empty. */
  readonly take: (field: string) => string
  readonly takeMoney: (field: string) => string
}

type Says = (entry: Entry) => string

const named =
  (verb: string, noun: string): Says =>
  ({ name }) =>
    name === '' ? `${verb} ${noun}` : `${verb} ${noun} ${name}`

/** "Put the head on hold: bent stud"; without the colon when there is nothing to add. */
const adding =
  (start: string, field: string): Says =>
  ({ take }) =>
    more(start, take(field))

const more = (start: string, end: string): string => (end === '' ? start : `${start}: ${end}`)

const step =
  (verb: string): Says =>
  ({ take, name }) =>
    `${verb} ${take('stepId') || name || 'a step'}`

const priceLine =
  (verb: string): Says =>
  ({ take, takeMoney }) => {
    const [text, price] = [take('text'), takeMoney('unitMinor')]
    return text === '' ? `${verb} a price line` : `${verb} price line “${text}” ${price}`.trimEnd()
  }

const numbered =
  (verb: string, noun: string, field = 'number'): Says =>
  ({ take }) =>
    `${verb} ${noun} ${take(field)}`.trimEnd()

const quoted = (text: string): string => (text === '' ? '' : ` “${text}”`)

const sentences: Readonly<Record<AuditAction, Says>> = {
  'backup.make': () => 'Made a backup',
  'call.log': () => 'Logged a call',
  'casting.add': named('Added', 'casting'),
  'casting.change': named('Changed', 'casting'),
  'casting.retire': named('Retired', 'casting'),
  'casting.restore': named('Restored', 'casting'),
  'casting.record-flow': named('Entered a reference flow run for', 'casting'),
  'casting.correct-flow': named('Corrected the reference flow run of', 'casting'),
  'credit-note.write': ({ take, takeMoney }) =>
    `Wrote credit note ${take('number')} to invoice ${take('of')}, ${takeMoney('totalMinor')}`,
  'customer.add': () => 'Added a customer',
  'customer.blank': adding('Removed the personal data of a customer', 'reason'),
  'customer.change-contact': () => 'Changed a customer’s contact details',
  'customer.import': ({ take }) => `Imported customers: ${take('added') || '0'} added`,
  'customer.merge': adding('Merged two customers', 'reason'),
  'customer.unmerge': () => 'Undid the merge of two customers',
  'customer-link.make': () => 'Made a link for the customer',
  'customer-link.revoke': () => 'Revoked the customer’s link',
  'estimate.save': ({ take }) => `Saved estimate ${take('number')}${quoted(take('title'))}`,
  'export.books': ({ take }) => `Took a file for the bookkeeper: ${take('kind')} of ${take('from')} to ${take('to')}`,
  'export.customers': ({ take }) => `Took all customers as a file: ${take('count') || '0'}`,
  'export.everything': () => 'Took everything along as one archive',
  'finding.report': adding('Reported a finding', 'what'),
  'finding.ask': ({ takeMoney }) => more('Asked the customer about a finding', takeMoney('priceMinor')),
  'finding.answer': adding('Recorded the customer’s answer', 'answer'),
  'head.add': () => 'Added a head',
  'head.change-casting': () => 'Changed the casting of a head',
  'head.tag': ({ take }) => `Tagged the head ${take('now')}`.trimEnd(),
  'head.untag': ({ take }) => `Removed tag ${take('was')}`.trimEnd(),
  'hold.open': adding('Put the head on hold', 'reason'),
  'hold.decide': adding('Decided the hold', 'decision'),
  'instrument.add': named('Added', 'instrument'),
  'instrument.change': named('Changed', 'instrument'),
  'invoice.write': ({ take, takeMoney }) => `Wrote invoice ${take('number')}, ${takeMoney('totalMinor')}`,
  'job.add-head': adding('Added a head to the job', 'reason'),
  'job.book': () => 'Booked the job',
  'job.cancel': adding('Cancelled the job', 'reason'),
  'job.change': () => 'Changed the job',
  'job.change-engine': () => 'Changed the engine data',
  'job.change-wanted': () => 'Changed the wanted figures of the job',
  'mail-server.change': () => 'Changed the mail settings',
  'mail-server.test': adding('Sent a test mail', 'fault'),
  'message.send': adding('Sent the customer a mail', 'kind'),
  'message.log': adding('Wrote to the customer', 'kind'),
  'message.deliver': () => 'Handed a mail to the mail server',
  'message.delay': adding('Could not send a mail yet', 'fault'),
  'message.fail': adding('Could not send a mail', 'fault'),
  'message.hold-back': () => 'Held a mail back: it was waiting in the backup that the shop was restored from',
  'message.try-again': () => 'Tried a mail again',
  'message.call-instead': () => 'Called the customer in place of a mail',
  'message-text.change': adding('Changed the wording of a message', 'kind'),
  'outside-order.send': numbered('Sent out', 'order'),
  'outside-order.accept': () => 'Recorded that the vendor accepted the order',
  'outside-order.change': () => 'Changed the freight of an outside order',
  'outside-order.repromise': adding('Changed the vendor’s promise', 'promisedOn'),
  'outside-order.receive': () => 'Received the head from the vendor',
  'outside-order.set-cost': ({ takeMoney }) => more('Entered the vendor’s cost', takeMoney('costMinor')),
  'outside-order.choose-marks': adding('Said how the vendor’s marks are meant', 'read'),
  'outside-order.confirm': adding('Confirmed the vendor’s work', 'step'),
  'outside-order.unconfirm': adding('Took back the confirmation of the vendor’s work', 'step'),
  'outside-order.reject': adding('Rejected the vendor’s work', 'why'),
  'pair.plan': numbered('Saved', 'cut plan version'),
  'parts-wait.open': adding('Marked as waiting for parts', 'what'),
  'parts-wait.end': () => 'Parts arrived',
  'payment.take': ({ take, takeMoney }) => {
    const kinds: Readonly<Record<string, string>> = { deposit: 'a deposit of', refund: 'a refund of' }
    const kind = kinds[take('kind')] ?? 'a payment of'
    return `Recorded ${kind} ${takeMoney('minor')}`.trimEnd()
  },
  'payment.void': ({ takeMoney, take }) => more(`Voided a payment of ${takeMoney('minor')}`, take('why')),
  'person.add': named('Added', 'person'),
  'person.change': named('Changed', 'person'),
  'person.retire': named('Retired', 'person'),
  'person.restore': named('Restored', 'person'),
  'person.set-password': named('Set a new password for', 'person'),
  'person.change-password': () => 'Changed their own password',
  'person.make-reset-link': named('Made a link to choose a new password for', 'person'),
  'person.reset-password': () => 'Chose a new password by a link',
  'person.end-session': named('Ended a session of', 'person'),
  'person.lift-waits': named('Lifted the wait at the sign-in of', 'person'),
  'person.set-factor': () => 'Set up their second factor',
  'person.renew-codes': () => 'Made new recovery codes',
  'person.drop-factor': () => 'Gave up their second factor',
  'person.clear-factor': named('Took away the second factor of', 'person'),
  'person.set-pin': () => 'Set their own PIN',
  'person.clear-pin': named('Cleared the PIN of', 'person'),
  'photo.add': adding('Added a photo', 'of'),
  'photo.withdraw': () => 'Removed a photo',
  'plan.accept': numbered('Recorded that the customer accepted', 'cut plan version'),
  'plan.send-unaccepted': adding('Sent a cut out that the customer had not accepted', 'reason'),
  'price-item.add': named('Added', 'price list item'),
  'price-item.change': named('Changed', 'price list item'),
  'price-item.retire': named('Retired', 'price list item'),
  'price-item.restore': named('Restored', 'price list item'),
  'price-line.add': priceLine('Added'),
  'price-line.change': ({ take }) => `Changed price line ${quoted(take('line')).trim()}`.trimEnd(),
  'price-line.remove': priceLine('Removed'),
  'reading.correct': ({ take }) => {
    const [was, now] = [take('was'), take('now')]
    return now === '' ? `Withdrew a reading (${was})` : `Corrected a reading from ${was || 'none'} to ${now}`
  },
  'reading-set.read': adding('Entered readings', 'step'),
  'release.make': numbered('Released the head,', 'sheet', 'revision'),
  'settings.change': () => 'Changed the settings',
  'settings.change-steps': () => 'Changed steps and stations',
  'shop.open': ({ take }) => `Opened the shop ${take('name')}`.trimEnd(),
  'shop.change': () => 'Changed the shop’s details',
  'shop-cut.count': adding('Counted a cut behind the rate', 'reason'),
  'shop-cut.leave-out': adding('Left a cut out of the rate', 'reason'),
  'shop-logo.set': () => 'Changed the shop’s logo',
  'shop-logo.remove': () => 'Removed the shop’s logo',
  'step.second-check': step('Did the second check of'),
  'step.start': step('Started'),
  'step.tick': step('Ticked'),
  'step.untick': step('Took back the tick of'),
  'supply-order.order': numbered('Ordered', 'supply order'),
  'supply-order.receive': numbered('Received', 'supply order'),
  'supply-order.repromise': numbered('Changed the promise of', 'supply order'),
  'supply-order.end': numbered('Cancelled the remainder of', 'supply order'),
  'tablet.enrol': named('Enrolled', 'tablet'),
  'tablet.change': named('Changed', 'tablet'),
  'tablet.revoke': named('Revoked', 'tablet'),
  'tablet-code.make': ({ take }) => `Made a code to enrol tablet ${take('name')}`.trimEnd(),
  'tax-rate.add': named('Added', 'tax'),
  'tax-rate.change': named('Changed', 'tax'),
  'tax-rate.retire': named('Retired', 'tax'),
  'tax-rate.restore': named('Restored', 'tax'),
  'vendor.add': named('Added', 'vendor'),
  'vendor.change': named('Changed', 'vendor'),
  'vendor.retire': named('Retired', 'vendor'),
  'vendor.restore': named('Restored', 'vendor'),
  'visit.book': () => 'Booked the head',
  'visit.change': () => 'Changed the head’s details on the job',
  'visit.rack': () => 'Moved the head to another rack location',
  'visit.change-wanted': () => 'Changed the wanted figures of the head',
  'visit.order-work': () => 'Changed the work ordered',
  'visit.order-head': numbered('Ordered the head on', 'supply order', 'order'),
  'visit.follow-steps': () => 'Applied newer steps to the head',
  'visit.send-out': () => 'Sent the head out',
  'visit.arrive': ({ take }) => `Received the head, tag ${take('tag')}`,
  'visit.return-as-is': adding('Returned the head as is', 'reason'),
  'visit.take-off': adding('Took the head off the job', 'reason'),
  'visit.hand-over': () => 'Handed over the head',
  'visit.undo-hand-over': adding('Took back the hand-over', 'reason'),
  'waiver.grant': adding('Waived a requirement', 'reason'),
}

export type AuditText = { readonly sentence: string; readonly changes: readonly string[] }

/** Ids of sets, runs and files: kept on record, of no use to a reader. */
const unsaid: ReadonlySet<string> = new Set(['gap', 'pdfSha256', 'sha256', 'set', 'run', 'occurrence', 'orderId'])
const isId = (value: unknown): boolean => typeof value === 'string' && /^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(value)

/**
 * A sentence for what was done, and a line for each field that changed and is not in the sentence.
 *
 * Example: price-line.remove with its text and price → 'Removed price line “Clean-up cut” $95.00'.
 */
export function auditText(action: AuditAction, name: string, changes: Changes, manner: AuditManner): AuditText {
  const used = new Set<string>()
  const use = (field: string): unknown => {
    used.add(field)
    return changes[field]
  }
  const sentence = sentences[action]({
    name,
    take: (field) => {
      const value = use(field)
      return isEmpty(value) ? '' : valueText(field === 'stepId' ? 'step' : field, value, manner)
    },
    takeMoney: (field) => money(use(field), manner),
  })
  const rest = Object.entries(changes).filter(
    ([field, value]) => !used.has(field) && !unsaid.has(field) && !isId(value) && !(field === 'name' && value === name),
  )
  return { sentence, changes: rest.flatMap(([field, value]) => changeText(field, value, manner)) }
}

/** "phone: from … to …" for a change, "material: iron" for what is new; nothing for what is new and empty. */
function changeText(field: string, value: unknown, manner: AuditManner): string[] {
  const isChange = typeof value === 'object' && value !== null && 'from' in value && 'to' in value
  if (isChange) {
    return [
      `${fieldName(field)}: from ${valueText(field, value.from, manner)} to ${valueText(field, value.to, manner)}`,
    ]
  }
  return isEmpty(value) ? [] : [`${fieldName(field)}: ${valueText(field, value, manner)}`]
}

/** The sentence without what it was done to, to look for a word in: "Put the head on hold". */
export const plainSentence = (action: AuditAction): string =>
  sentences[action]({ name: '', take: () => '', takeMoney: () => '' })
