import 'server-only'
import { RefusedError } from '@/lib/core/errors'
import type { Reader } from './db'

const none = (what: string): never => {
  throw new RefusedError({ code: 'not-found', message: `There is no such ${what} here.` })
}

export async function paperJob(reader: Reader, number: string) {
  const job = await reader.job.findUnique({
    where: { number },
    include: { customer: { include: { contact: true } }, engine: { include: { figures: true } } },
  })
  return job ?? none('job')
}

export async function paperOrder(reader: Reader, id: string) {
  const order = await reader.outsideOrder.findUnique({
    where: { id },
    include: { vendor: true, redoOf: { select: { number: true } }, visits: { orderBy: { id: 'asc' } } },
  })
  return order ?? none('outside order')
}
