import 'server-only'
import { formatMoney } from '@/lib/core/money/format-money'
import { saidDay, type SaidDay } from '@/lib/core/shop/when-words'
import type { WorkHead, WorkJob } from '@/lib/use-cases/counter/job-row'
import type { CounterView } from '@/lib/use-cases/counter/see-counter'
import { phoneLink } from '@/lib/web/phone-link'

/** A row of the work in hand with its days and amounts as the shop writes them, so that a browser need not. */
export type SaidJob = {
  readonly jobId: string
  readonly number: string
  readonly customer: string
  readonly phone: string
  /** Dials the number; null: there is none to dial. */
  readonly dial: string | null
  readonly heads: readonly { readonly headId: string; readonly tag: string }[]
  /** Where they are and what is next; heads that are in one state are said once. `tag`: whose it is; '' where it is of all. */
  readonly states: readonly {
    readonly tag: string
    readonly next: string
    readonly waits: string
    readonly held: boolean
  }[]
  /** Null: all that is here is ready. */
  readonly expected: {
    readonly middle: SaidDay
    readonly nineOfTen: SaidDay
    readonly why: string
    readonly atRisk: boolean
  } | null
  readonly promised: SaidDay | null
  /** Days to the promise; null: nothing promised, or all of it is ready. */
  readonly daysLeft: number | null
  readonly urgent: boolean
  /** Null for those who see no prices. */
  readonly owed: { readonly minor: number; readonly said: string } | null
}

export async function saidJob(job: WorkJob, { locale, currency }: CounterView): Promise<SaidJob> {
  const { jobId, number, customer, phone, promiseOn, daysLeft, urgent, heads, finish, atRisk, dueMinor } = job
  const day = (on: string) => saidDay(on, locale)
  return {
    ...{ jobId, number, customer, phone, urgent },
    dial: await phoneLink(phone),
    heads: heads.map(({ headId, tag }) => ({ headId, tag })),
    states: statesOf(heads),
    expected: finish && {
      middle: day(finish.middleOn),
      nineOfTen: day(finish.nineOfTenOn),
      why: [finish.why, finish.from].filter(Boolean).join('; '),
      atRisk,
    },
    promised: promiseOn === null ? null : day(promiseOn),
    daysLeft: finish === null ? null : daysLeft,
    owed: dueMinor === null ? null : { minor: dueMinor, said: formatMoney(dueMinor, currency, locale) },
  }
}

function statesOf(heads: readonly WorkHead[]): SaidJob['states'] {
  const told = [...new Map(heads.map((head) => [`${head.next} ${head.waits}`, head])).values()]
  return told.map(({ tag, next, waits, whereabouts }) => ({
    tag: told.length > 1 ? tag : '',
    next,
    waits,
    held: whereabouts === 'held',
  }))
}
