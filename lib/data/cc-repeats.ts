import 'server-only'
import { noRepeats, type RepeatTally } from '@/lib/core/chamber/repeatability'
import type { Tx } from './db'

/** The one row of the shop's total. */
export const repeatTotalId = 'shop'

/** Keeps what a visit's repeats say, and the shop's total in step with it. */
export async function keepRepeats(
  tx: Tx,
  visitId: string,
  was: RepeatTally | null,
  { squaresCc2, degrees }: RepeatTally,
): Promise<void> {
  const before = was ?? noRepeats
  if (before.degrees === degrees && before.squaresCc2 === squaresCc2) return
  await tx.ccRepeats.upsert({
    where: { visitId },
    create: { visitId, squaresCc2, degrees },
    update: { squaresCc2, degrees },
  })
  await tx.ccRepeatTotal.upsert({
    where: { id: repeatTotalId },
    create: { id: repeatTotalId, squaresCc2, degrees },
    update: {
      squaresCc2: { increment: squaresCc2 - before.squaresCc2 },
      degrees: { increment: degrees - before.degrees },
    },
  })
}
