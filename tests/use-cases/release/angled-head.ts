import { receiveOutsideSchema, sendOutsideSchema } from '@/lib/schemas/outside'
import { receiveOutside } from '@/lib/use-cases/outside/receive-outside'
import { sendOutside } from '@/lib/use-cases/outside/send-outside'
import type { TestDatabase } from '@/tests/setup/database'
import { at, monday, owner } from '../jobs/counter-shop'
import { acceptNewest, bookAnother, makePlan, shopWithJob, workThrough, type Otherwise } from './whole-job'

const vendorId = '019caed9-4300-7000-8000-00000000000a'

/**
 * The plan: 60 thou at the opening's centre, 0.635 of 7 in across: 20 flat and 63 at the exhaust edge, atan(0.063/7) =
 * 0.52°. The vendor cut 66: cos(atan(0.066/7)) = 0.9999556; square to the new deck 4.500·cos = 4.4998 at the intake edge
 * and 4.434·cos = 4.4338 at the exhaust edge; in the end, 20 thou lower, 4.480·cos = 4.4798 and 4.414·cos = 4.4138.
 */
const corners: Readonly<Record<string, readonly [intake: string, exhaust: string]>> = {
  'arrival-figures': ['4.4998', '4.4338'],
  finished: ['4.4798', '4.4138'],
}

/** What is read off that head, where it differs from any other. */
export const readAngled: Otherwise = (step, kind, point) => {
  const edges = kind === 'thickness' ? corners[step.stepId] : undefined
  if (edges) return point.startsWith('intake') ? edges[0] : edges[1]
  if (kind === 'cc' && step.stepId === 'arrival-figures') return '57.2'
  if (kind === 'edge-depth') return point === 'exhaust' ? '63.5 thou' : '0'
  return kind === 'cut-depth' ? '20 thou' : undefined
}

/** A head that is planned for an angle cut by a vendor and a flat cut here, done up to where it goes out. */
export async function angledHead(database: TestDatabase, otherwise: Otherwise = readAngled): Promise<string> {
  await shopWithJob(database)
  await database.client.vendor.create({
    data: {
      id: vendorId,
      name: 'Tarn Grinding',
      phone: '',
      email: '',
      address: '',
      services: '',
      createdAt: monday,
    },
  })
  const job = await bookAnother({ ordered: ['angle-cut', 'flat-cut'], targetCc: '54.0' })
  const visitId = job.heads[0]?.visitId ?? ''
  await workThrough(visitId, ['angle-cut'], otherwise)
  await makePlan(job, { kind: 'angle-flat', splitBy: 'flat', flatIn: '0.020' })
  await acceptNewest(job)
  return visitId
}

/** Out to the vendor and back, the cut confirmed; gives back the order. */
export async function outAndBack(visitId: string, marksTyped: string, marksRead: string): Promise<string> {
  const { orderId } = await sendOutside(
    owner,
    sendOutsideSchema.parse({
      vendorId,
      scope: ['angle-cut'],
      heads: [{ visitId, angleIn: '', flatIn: '', comesWith: '' }],
      finishesToSize: false,
      instructions: '',
      freight: '',
      tracking: '',
      promisedOn: '2026-03-12',
    }),
    at(monday),
  )
  const heads = [{ visitId, confirmed: ['angle-cut'], seatsIn: true, marksTyped, marksRead }]
  await receiveOutside(owner, receiveOutsideSchema.parse({ orderId, heads }), at(monday))
  return orderId
}
