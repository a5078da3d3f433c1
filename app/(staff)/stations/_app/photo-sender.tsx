'use client'
import { useMemo, type ReactNode } from 'react'
import { FileSenderContext, type FileSender } from '@/app/_components/form/file-sender'
import { useHere } from './here'
import { useCatchUp } from './use-catch-up'
import { keepAndSend } from './use-deeds'

/** Photos taken inside are kept on this device first, like every other deed. `words`: of what they are. */
export function PhotoSender({ words, children }: { words: string; children: ReactNode }) {
  const here = useHere()
  const catchUp = useCatchUp()
  const sender = useMemo<FileSender>(() => {
    const send = (async (_to, { op, input }) => {
      const photo = { ...input.words, visitId: input.words.visitId ?? '' }
      const result = await keepAndSend(here, { id: op, kind: 'photo', words, file: input.file, input: photo })
      if (result.ok && result.value.keptAs === undefined) await catchUp()
      return result
    }) as FileSender['send']
    return { send, refreshes: false }
  }, [here, catchUp, words])
  return <FileSenderContext value={sender}>{children}</FileSenderContext>
}
