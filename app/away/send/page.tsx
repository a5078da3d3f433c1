import { notFound } from 'next/navigation'
import { z } from 'zod'
import { Frame } from '@/app/_components/frame'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { seeSending } from '@/lib/use-cases/outside/see-sending'
import { seen } from '@/lib/web/page-refusals'
import { requirePerson } from '@/lib/web/require-actor'
import { SendForm } from './send-form'

export const metadata = { title: 'Send to a vendor' }

type Props = { searchParams: Promise<{ head?: string | string[] }> }

export default async function SendPage({ searchParams }: Props) {
  const visitId = z.uuid().safeParse((await searchParams).head)
  if (!visitId.success) notFound()
  const actor = await requirePerson('outside.send', '/away')
  const { heads, vendors } = await seen(seeSending(actor, visitId.data))
  return (
    <Frame place="away" actor={actor}>
      <h1>Send to a vendor</h1>
      {vendors.length === 0 ? (
        <EmptyState title="No vendor is on record yet.">
          <p>The owner enters vendors in the Back room.</p>
          <ButtonLink href="/back-room">To the Back room</ButtonLink>
        </EmptyState>
      ) : (
        <SendForm asked={visitId.data} heads={heads} vendors={vendors} />
      )}
    </Frame>
  )
}
