'use client'
import { useCallback, type ReactNode } from 'react'
import { FileSender } from '@/app/_components/form/file-sender'
import type { sendFile } from '@/app/_components/form/send-file'
import { useHere } from './here'
import { keepAndSend } from './use-deeds'

/** Photos taken inside are kept on this device first, like every other deed. `words`: of what they are. */
export function PhotoSender({ words, children }: { words: string; children: ReactNode }) {
  const here = useHere()
  const send = useCallback(
    async (_to: unknown, { op, input }: Parameters<typeof sendFile>[1]) =>
      keepAndSend(here, {
        id: op,
        kind: 'photo',
        words,
        file: input.file,
        input: { ...input.words, visitId: input.words.visitId ?? '' },
      }),
    [here, words],
  ) as typeof sendFile
  return <FileSender value={send}>{children}</FileSender>
}
