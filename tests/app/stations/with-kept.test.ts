import { describe, expect, it } from 'vitest'
import { deedsAt, queueWithKept, withKept } from '@/app/(staff)/stations/_app/with-kept'
import { withKeptOfHead } from '@/app/(staff)/stations/_app/kept-of-head'
import type { DeedKind, KeptDeed } from '@/app/_components/outbox/kept'
import { keyOf } from '@/lib/core/route/keys'
import type { QueueLine } from '@/lib/use-cases/stations/see-queue'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'

const chambers = keyOf('chambers')
const nameOf = (id: string) => (id === 'p-ivo' ? 'Ivo' : 'Somebody')
const takenAt = '2026-03-02T14:00:00.000Z'
let seq = 0
const deed = (kind: DeedKind, input: object = {}, over: Partial<KeptDeed> = {}): KeptDeed => ({
  id: `d${seq}`,
  seq: (seq += 1),
  kind,
  version: 1,
  personId: 'p-ivo',
  takenAt,
  words: '',
  input: { visitId: 'v1', step: chambers, ...input },
  ...over,
})
const entry = (text: string, notTaken: string | null = null) => ({
  entry: { readings: [{ kind: 'cc', point: '1', text, notTaken }] },
})

const screen = {
  visitId: 'v1',
  step: { ...chambers, state: 'ready' },
  ticked: null,
  fields: [
    { kind: 'cc', point: '1', answer: null, notTaken: null },
    { kind: 'cc', point: '2', answer: '63.0', notTaken: null },
  ],
} as unknown as StepScreen

describe('a step with what was done here and not sent yet', () => {
  it('counts as done on this screen, by whom and when, with what was typed', () => {
    const shown = withKept(screen, [deed('tick', entry('62.8'))], nameOf)
    expect(shown.step.state).toBe('done')
    expect(shown.ticked).toEqual({ by: 'Ivo', at: takenAt, free: true })
    expect(shown.fields.map(({ answer }) => answer)).toEqual(['62.8', '63.0'])
  })

  it('shows what is not taken, and readings without a tick', () => {
    const shown = withKept(screen, [deed('record-readings', entry('', 'the plug leaks'))], nameOf)
    expect(shown.step.state).toBe('ready')
    expect(shown.fields[0]).toMatchObject({ answer: null, notTaken: 'the plug leaks' })
  })

  it('follows the order of the deeds: ticked, taken back, started', () => {
    const deeds = [deed('tick', entry('62.8')), deed('undo-tick'), deed('start')]
    expect(withKept(screen, deeds.slice(0, 2), nameOf)).toMatchObject({ step: { state: 'ready' }, ticked: null })
    expect(withKept(screen, deeds, nameOf).step.state).toBe('started')
  })

  it('shows a reading as it was corrected here, and where the head was put', () => {
    const done = {
      ...screen,
      rackPlace: 'A-1',
      fields: screen.fields.map((field) => ({ ...field, ...(field.point === '2' && { readingId: 'r2' }) })),
    }
    const correction = { step: undefined, readingId: 'r2', correction: 'replace', text: '62.4' }
    const deeds = [deed('correct-reading', correction), deed('rack-place', { step: undefined, rackPlace: 'B-3' })]
    const shown = withKeptOfHead(done, deeds)
    expect(shown.fields.map(({ answer }) => answer)).toEqual([null, '62.4'])
    expect(shown.rackPlace).toBe('B-3')
    const withdrawn = deed('correct-reading', { ...correction, correction: 'withdraw', text: '' })
    expect(withKeptOfHead(done, [withdrawn]).fields[1]?.answer).toBeNull()
    const repeats = {
      words: '',
      values: [
        { id: 'r1', text: '62.8' },
        { id: 'r2', text: '63.2' },
      ],
    }
    const read = { ...done, fields: done.fields.map((field) => ({ ...field, repeats })) }
    const [, field] = withKeptOfHead(read, deeds).fields
    expect([field?.answer, field?.repeats?.values.map(({ text }) => text)]).toEqual(['63.0', ['62.8', '62.4']])
    const refused = deeds.map((one) => ({ ...one, refusal: { code: 'conflict', message: '' } as const }))
    expect(withKeptOfHead(done, refused)).toEqual(done)
  })

  it('is as it was for deeds of another head, of another step, and for those that were refused', () => {
    const refusal = { code: 'conflict', message: '' } as const
    const deeds = [
      deed('tick', { visitId: 'v2' }),
      deed('tick', { step: keyOf('crack') }),
      deed('tick', {}, { refusal }),
      deed('finding', { step: undefined, what: 'loose' }),
    ]
    expect(withKept(screen, deeds, nameOf)).toEqual(screen)
    expect(deedsAt(deeds, 'v1', chambers)).toEqual([])
  })
})

describe('a queue with what was done here and not sent yet', () => {
  const line = (visitId: string) => ({ visitId, step: chambers }) as unknown as QueueLine
  const queue = { ready: [line('v1'), line('v2'), line('v3')], started: [line('v4')] }
  const names = (lines: readonly QueueLine[]) => lines.map(({ visitId }) => visitId)

  it('moves its lines: done here, started, and back', () => {
    const at = (visitId: string, ...kinds: DeedKind[]) => kinds.map((kind) => deed(kind, { visitId }))
    const { ready, started, doneHere } = queueWithKept(queue, [
      ...at('v1', 'tick'),
      ...at('v2', 'start'),
      ...at('v3', 'tick', 'undo-tick'),
      ...at('v4', 'record-readings', 'tick'),
    ])
    expect(names(doneHere)).toEqual(['v1', 'v4'])
    expect(names(started)).toEqual(['v2'])
    expect(names(ready)).toEqual(['v3'])
  })
})
