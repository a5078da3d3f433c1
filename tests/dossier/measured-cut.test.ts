import { expect, it, vi } from 'vitest'
import { loadDossier } from '@/lib/dossier/dossier'
import { edgesMeasured } from '@/lib/dossier/measured-cut'
import { removedWords } from '@/lib/dossier/spec/spec-cuts'
import { testDatabase } from '@/tests/setup/database'
import { angledHead, outAndBack, readAngled } from '../use-cases/release/angled-head'
import { workThrough, type Otherwise } from '../use-cases/release/whole-job'

vi.setConfig({ testTimeout: 120_000 })

/**
 * The angled head, 7 thou thinner when it came: 4.493 of 4.500 in. A vendor takes 66 thou off the exhaust edge, we 20 all
 * over: 20 gone at the intake edge, 86 at the exhaust edge, and 93 since it was new. Gauged square to the new deck, with
 * cos(atan(0.066/7)) = 0.9999556: 4.493·cos = 4.4928 and 4.427·cos = 4.4268 on arrival, 4.473·cos = 4.4728 and
 * 4.407·cos = 4.4068 in the end.
 */
const thickness: Readonly<Record<string, readonly [intake: string, exhaust: string]>> = {
  thickness: ['4.4930', '4.4930'],
  'arrival-figures': ['4.4928', '4.4268'],
  finished: ['4.4728', '4.4068'],
}
const thinner: Otherwise = (step, kind, point) => {
  if (kind === 'removed-before') return '.007'
  if (kind !== 'thickness') return readAngled(step, kind, point)
  const edges = thickness[step.stepId]
  return edges && (point.startsWith('intake') ? edges[0] : edges[1])
}

it('each edge of an angle cut lost its own depth, and what went before the job counts since new', async () => {
  const database = await testDatabase()
  const visitId = await angledHead(database, thinner)
  await outAndBack(visitId, '66 EX', '66')
  await workThrough(visitId, ['hand-over'], thinner)
  const head = await loadDossier(database.client, visitId)
  const edges = edgesMeasured(head)
  expect(edges?.intake).toBeCloseTo(0.02, 3)
  expect(edges?.exhaust).toBeCloseTo(0.086, 3)
  expect(removedWords(head)).toBe('0.0930 in at the deepest, over all visits')
})
