import { notFound } from 'next/navigation'
import { stations } from '@/lib/core/route/step-ids'
import { askedStep } from '@/lib/schemas/asked-step'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { requirePerson } from '@/lib/web/require-actor'
import { Changed } from '../../../_app/changed'

type Props = {
  params: Promise<{ station: string; visit: string }>
  searchParams: Promise<Record<string, string | string[] | undefined>>
}

export const metadata = { title: 'Stations' }

/** The station app draws the step: here only whether the address is one. */
export default async function StepPage({ params, searchParams }: Props) {
  const { station, visit } = await params
  await requirePerson('job.see')
  const isOne =
    stations.some((one) => one === station) && askedStep.safeParse({ ...(await searchParams), visit }).success
  if (!isOne) notFound()
  return <Changed newest={await newestChange()} />
}
