import { useMemo } from 'react'
import { LostError, type ServerAction } from '@/app/_components/form/call-action'
import type { DeedKind, KeptDeed } from '@/app/_components/outbox/kept'
import type { Refusal, Result } from '@/lib/core/errors'
import { useHere, type Here } from './here'
import { useCatchUp } from './use-catch-up'

/** What a deed answers here: what the server said, or that it is kept and not sent yet, under its operation id. */
export type DeedValue = {
  readonly ticked?: boolean
  readonly held?: readonly string[]
  readonly findingId?: string
  readonly holdId?: string
  /** The operation id of what is kept here; left out: it is done. */
  readonly keptAs?: string
}

type Input = { readonly visitId: string }

/** An action that is kept on this device before it is sent. `words`: what it is, for the person. */
export type Deed = <I extends Input>(kind: DeedKind, words: string, file?: Blob) => ServerAction<I, DeedValue>

const noRoom = 'This device has no room to keep it, so it was not sent. Free some storage and try again.'

/** The screen shows what is no longer so. A conflict that says what came between is answered on the screen as it was. */
const isStale = ({ code, theirs }: Refusal): boolean =>
  code === 'wrong-state' || code === 'not-on-route' || (code === 'conflict' && theirs?.seen === undefined)

export function useDeeds(): Deed {
  const here = useHere()
  const catchUp = useCatchUp()
  return useMemo(
    () => (kind, words, file) => async (call) => {
      const result = await keepAndSend(here, { id: call.op, kind, words, file, input: call.input })
      if (result.ok ? result.value.keptAs === undefined : isStale(result.refusal)) await catchUp()
      return result
    },
    [here, catchUp],
  )
}

type Wanted = Pick<KeptDeed, 'id' | 'kind' | 'words'> & { readonly input: Input; readonly file: Blob | undefined }

export async function keepAndSend({ outbox, person }: Here, wanted: Wanted): Promise<Result<DeedValue>> {
  const { file, input, ...deed } = wanted
  const kept = {
    ...deed,
    version: 1,
    personId: person.id,
    takenAt: new Date().toISOString(),
    input: input as KeptDeed['input'],
  }
  const outcome = await outbox.add(file ? { ...kept, file } : kept).catch(() => {
    throw new LostError(noRoom)
  })
  if (outcome.is === 'refused') return { ok: false, refusal: outcome.refusal }
  return { ok: true, value: outcome.is === 'kept' ? { keptAs: deed.id } : ((outcome.value ?? {}) as DeedValue) }
}
