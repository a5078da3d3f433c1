import { notFound } from 'next/navigation'
import { z } from 'zod'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { seeSending } from '@/lib/use-cases/outside/see-sending'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { SendForm } from './send-form'

export const metadata = { title: 'Send to a vendor' }

type Props = { searchParams: Promise<{ head?: string | string[]; redo?: string | string[] }> }

const heads = z.array(z.uuid()).min(1).max(40)

export default async function SendPage({ searchParams }: Props) {
  const { head, redo } = await searchParams
  const visitIds = heads.safeParse([head ?? []].flat())
  if (!visitIds.success) notFound()
  const redoOfId = z.uuid().safeParse(redo)
  const actor = await requirePerson('outside.send')
  const asked = { visitIds: visitIds.data, redoOfId: redoOfId.data ?? null }
  const sending = await orNotFound(seeSending(actor, asked))
  return (
    <>
      <h1>{sending.redo ? `Send again for rework of ${sending.redo.number}` : 'Send to a vendor'}</h1>
      {sending.vendors.rows.length === 0 ? (
        <EmptyState title="No vendors yet.">
          <p>The owner adds them in the Back room.</p>
        </EmptyState>
      ) : (
        <SendForm asked={asked.visitIds} {...sending} />
      )}
    </>
  )
}
