import type { JobView } from '@/lib/use-cases/jobs/see-job'

/** What is to be done next about a job's money: one main button at a time; null: nothing. */
export function nextMoneyStep(
  job: Pick<JobView, 'heads'>,
  account: NonNullable<JobView['account']>,
): 'invoice' | 'payment' | 'hand-over' | null {
  const isReady = job.heads.some(({ mayGo }) => mayGo)
  const isGone = job.heads.some(({ gone }) => gone)
  if ((isReady || isGone) && account.prices.some(({ invoice }) => invoice === null)) return 'invoice'
  if ((isReady || isGone) && account.balance.code === 'to-pay') return 'payment'
  return isReady ? 'hand-over' : null
}
