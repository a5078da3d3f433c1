import { castingFigures, type CastingFigureKey } from '../core/casting/figures'
import { formatMoney } from '../core/money/format-money'
import { rateText } from '../core/money/percent'
import { quantityText } from '../core/money/quantity'
import type { MailFault } from '../core/messages/mail-fault'
import type { MessageKind, MessageWay } from '../core/messages/kinds'
import { readingSpecs } from '../core/readings/specs'
import type { ReadingKind } from '../core/readings/types'
import { wantedFigures, type WantedKey } from '../core/wanted/figures'
import type { Station } from '../core/route/step-ids'
import { stationLabels } from '../core/route/stations'
import { mailFaultWords, messageKindLabels, wayLabels } from './messages'
import { dateWords, dayWords, momentWords, type WhenManner } from '../core/shop/when-words'

export type AuditManner = WhenManner & {
  readonly currency: string
  /** What this shop calls a step, '' for one that it does not have. */
  readonly stepName: (stepId: string) => string
}

export type Changes = Readonly<Record<string, unknown>>

export const isEmpty = (value: unknown): boolean =>
  value === null || value === undefined || value === '' || (Array.isArray(value) && value.length === 0)

/** Rates as entries of the log have them from when a rate was kept in hundredths of a per cent. */
const ratesOfHundredths: Readonly<Record<string, string>> = { taxBasisPoints: 'tax', basisPoints: 'rate' }

/** Where the field's own name, split into words, would not be said in a shop. */
const fieldNames: Readonly<Record<string, string>> = {
  addsWork: 'work added',
  angleIn: 'angle part',
  boxHeads: 'heads in a box',
  cornerInset: 'corners touched',
  costMinor: 'cost',
  edgeIn: 'inside the edges',
  endIn: 'inside the ends',
  flatIn: 'flat part',
  freightMinor: 'freight',
  how: 'how',
  byItself: 'goes out by itself',
  fromAddress: 'from',
  replyTo: 'answers to',
  marks: 'vendor’s marks',
  minor: 'amount',
  notDone: 'not done',
  of: 'photo of',
  ordered: 'work ordered',
  partsBack: 'parts returned',
  pdfSha256: 'file',
  presentCc: 'chamber now',
  priceMinor: 'price',
  promisedOn: 'promised for',
  rackPlace: 'rack location',
  quantityThousandths: 'quantity',
  redoCost: 'redo paid by',
  roles: 'roles',
  rulesVersion: 'version of the steps',
  set: 'reading set',
  side: 'bank or side',
  signIn: 'sign-in name',
  ...ratesOfHundredths,
  taxMillionths: 'tax',
  taxName: 'name of the tax',
  rateMillionths: 'rate',
  isDefault: 'picked for new lines',
  totalMinor: 'total',
  unpaidMinor: 'left unpaid',
  unpaidReason: 'why it may go unpaid',
  why: 'reason',
  points: 'readings',
  unitMinor: 'unit price',
  was: 'before',
  now: 'after',
}

/** "any.thicknessNewIn" → "new head thickness"; "orderId" → "order"; "chamberCount" → "chamber count". */
export function fieldName(field: string): string {
  const [form = '', key = ''] = field.split('.')
  if (form === 'wanted' && key in wantedFigures) return `${wantedFigures[key as WantedKey].label}, wanted`
  const figure = castingFigures[key as CastingFigureKey]
  if (figure) return form === 'any' ? figure.label : `${figure.label}, ${form}`
  const bare = field.replace(/(?<=.)Id$/, '')
  return fieldNames[field] ?? bare.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

export const money = (minor: unknown, { currency, locale }: AuditManner): string =>
  typeof minor === 'number' ? formatMoney(minor, currency, locale) : ''

/** "yes", "0.018 in", "$95.00", "Nov 24, 2026", "2, 3"; nothing is "none". */
export function valueText(field: string, value: unknown, manner: AuditManner): string {
  if (isEmpty(value)) return 'none'
  if (value === true) return 'yes'
  if (value === false) return 'no'
  if (typeof value === 'number') return numberText(field, value, manner)
  if (typeof value === 'string') return stringText(field, value, manner)
  if (Array.isArray(value)) return field === 'points' ? pointsText(value) : listText(value, field, manner)
  const inner = Object.entries(value as object).filter(([, each]) => !isEmpty(each))
  return inner.map(([key, each]) => `${fieldName(key)} ${valueText(key, each, manner)}`).join('; ')
}

function numberText(field: string, value: number, manner: AuditManner): string {
  if (/minor$/i.test(field)) return money(value, manner)
  if (/millionths$/i.test(field)) return rateText(value)
  if (field in ratesOfHundredths) return rateText(value * 100)
  if (field === 'quantityThousandths') return quantityText(value)
  return /[a-z]In$/.test(field) ? `${value.toFixed(4)} in` : String(value)
}

function stringText(field: string, value: string, manner: AuditManner): string {
  if (/^\d{4}-\d\d-\d\d$/.test(value)) return dayWords(value, manner)
  if (/^\d{4}-\d\d-\d\dT/.test(value)) {
    return field === 'expiresAt' ? dateWords(new Date(value), manner) : momentWords(new Date(value), manner)
  }
  if (field === 'kind') return messageKindLabels[value as MessageKind] ?? value
  if (field === 'way') return wayLabels[value as MessageWay] ?? value
  if (field === 'fault') return mailFaultWords[value as MailFault] ?? value
  if (field === 'station') return stationLabels[value as Station] ?? value
  return field === 'step' ? manner.stepName(value) || value : value
}

function listText(values: readonly unknown[], field: string, manner: AuditManner): string {
  const between = values.some((value) => typeof value === 'object' && value !== null) ? '; ' : ', '
  return values
    .filter((value) => !isEmpty(value))
    .map((value) => valueText(field, value, manner))
    .join(between)
}

/** Readings as they were kept: kind, point, text typed, reason it was not taken. Those of a flow run have no kind. */
function pointsText(points: readonly unknown[]): string {
  return points
    .filter(Array.isArray)
    .map((point: readonly unknown[]) => {
      const [kind, place, text, notTaken] = point.length === 4 ? point : ['flow', ...point]
      const name = readingSpecs[kind as ReadingKind]?.label ?? String(kind)
      const at = isEmpty(place) ? '' : ` ${String(place)}`
      return `${name}${at}: ${isEmpty(text) ? `not taken (${String(notTaken)})` : String(text)}`
    })
    .join('; ')
}
