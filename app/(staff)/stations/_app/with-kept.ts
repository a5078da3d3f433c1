import type { KeptDeed } from '@/app/_components/outbox/kept'
import { keyText, sameKey } from '@/lib/core/route/keys'
import type { StepKey } from '@/lib/core/route/step-ids'
import type { Queue, QueueLine } from '@/lib/use-cases/stations/see-queue'
import type { StepField, StepScreen } from '@/lib/use-cases/stations/see-step'

type Entry = { readonly readings?: readonly Answered[] } | null
type Answered = {
  readonly kind: string
  readonly point: string
  readonly text: string
  readonly notTaken: string | null
}

type Input = KeptDeed['input']

const isAtStep = (input: Input): input is Input & { readonly step: StepKey } =>
  typeof input.step === 'object' && input.step !== null

/** Deeds at a step that were done here and not sent yet, oldest first. */
export const deedsAt = (deeds: readonly KeptDeed[], visitId: string, key: StepKey): KeptDeed[] =>
  deeds.filter(
    ({ input, refusal }) =>
      refusal === undefined && input.visitId === visitId && isAtStep(input) && sameKey(input.step, key),
  )

/** The step as the person at this tablet left it: what was not sent yet counts as done here. */
export const withKept = (
  screen: StepScreen,
  deeds: readonly KeptDeed[],
  nameOf: (personId: string) => string,
): StepScreen =>
  deedsAt(deeds, screen.visitId, screen.step).reduce(
    (shown, deed) => withDeed(shown, deed, nameOf(deed.personId)),
    screen,
  )

function withDeed(screen: StepScreen, { kind, input, takenAt }: KeptDeed, by: string): StepScreen {
  const { step } = screen
  const entry = ('entry' in input ? input.entry : null) as Entry
  const fields = entry?.readings ? withAnswers(screen.fields, entry.readings) : screen.fields
  if (kind === 'start') return { ...screen, step: { ...step, state: 'started' } }
  if (kind === 'undo-tick') return { ...screen, step: { ...step, state: 'ready' }, ticked: null }
  if (kind === 'record-readings') return { ...screen, fields }
  if (kind !== 'tick') return screen
  return { ...screen, fields, step: { ...step, state: 'done' }, ticked: { by, at: takenAt, free: true } }
}

const withAnswers = (fields: readonly StepField[], readings: readonly Answered[]): StepField[] =>
  fields.map((field) => {
    const given = readings.findLast(({ kind, point }) => kind === field.kind && point === field.point)
    return given ? { ...field, answer: given.text === '' ? null : given.text, notTaken: given.notTaken } : field
  })

/** A queue as this tablet's own deeds leave it, and what was done here and is not sent yet. */
export type QueueHere = Pick<Queue, 'ready' | 'started'> & { readonly doneHere: readonly QueueLine[] }

export function queueWithKept(
  { ready, started }: Pick<Queue, 'ready' | 'started'>,
  deeds: readonly KeptDeed[],
): QueueHere {
  const last = new Map<string, KeptDeed['kind']>()
  for (const { kind, input, refusal } of deeds) {
    if (refusal === undefined && isAtStep(input)) last.set(`${input.visitId} ${keyText(input.step)}`, kind)
  }
  const at = ({ visitId, step }: QueueLine) => last.get(`${visitId} ${keyText(step)}`)
  const lines = [...ready, ...started]
  const isDone = (line: QueueLine) => at(line) === 'tick'
  const isStarted = (line: QueueLine) =>
    !isDone(line) && (started.includes(line) || at(line) === 'start' || at(line) === 'record-readings')
  return {
    ready: lines.filter((line) => !isDone(line) && !isStarted(line)),
    started: lines.filter(isStarted),
    doneHere: lines.filter(isDone),
  }
}
