import { closeClient, openClient } from '@/lib/data/client'
import { db } from '@/lib/data/db'
import { driveTo, oneHand } from '@/lib/demo/drive/drive'
import { demoStaff } from '@/lib/demo/shop'
import { lastSeq } from '@/lib/dossier/find-step'
import { loadDossier } from '@/lib/dossier/dossier'
import { bookPrepared } from '../setup/prepared-heads'

/** Heads whose chambers are to be measured next, as many as asked for; said as the operations that tick them. */
const now = new Date()
await openClient()
const staff = await demoStaff()
const key = { stepId: 'chambers', occurrence: '', orderId: null } as const
const reading = (kind: string, point: string, text: string) => ({ kind, point, text, notTaken: null })
const typed = [
  ...['63.1', '62.9', '63.0', '63.0'].map((text, at) => reading('cc', String(at + 1), text)),
  ...['valves-used', 'plug-used'].map((kind) => reading(kind, '', 'shop')),
]
const deeds = []
for (let count = 0; count < Number(process.argv[2]); count += 1) {
  const wanted = { phone: `555-${String(7000 + count)}`, casting: 'Cawdrey wedge' }
  const { visit } = await bookPrepared(staff, `Bench customer ${count}`, wanted, now)
  await driveTo(oneHand(staff.dov, now), visit.visitId, 'chambers')
  const entry = { readings: typed, instrumentId: null, conditions: {}, takenAt: null }
  const seen = lastSeq((await loadDossier(await db(), visit.visitId)).visit, key)
  deeds.push({
    kind: 'tick',
    version: 1,
    personId: staff.dov.personId,
    input: { visitId: visit.visitId, step: key, seen, entry },
  })
}
process.stdout.write(JSON.stringify(deeds))
await closeClient()
