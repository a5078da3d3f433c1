'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction, type Answer } from '@/app/_components/form/call-action'
import { sendFile } from '@/app/_components/form/send-file'
import { removeLogoAction } from './actions'

export type Chosen = {
  readonly file: Blob
  /** Address of the picture in this browser's memory. */
  readonly preview: string
  /** Null: this browser cannot read it. */
  readonly size: { readonly widthPx: number; readonly heightPx: number } | null
}

/** Refusals that the same picture meets again. */
const unusable: ReadonlySet<string> = new Set(['unreadable', 'out-of-range'])

/** A picture that is looked at before it becomes the shop's logo. `seen` is the logo that the page shows; '' for none. */
export function useLogo(seen: string) {
  const router = useRouter()
  const attempts = useRef(new OperationIds())
  const sending = useRef(false)
  const [chosen, setChosen] = useState<Chosen | null>(null)
  const [pending, setPending] = useState(false)
  const [problem, setProblem] = useState('')
  const [said, setSaid] = useState('')
  const preview = chosen?.preview
  useEffect(() => () => (preview === undefined ? undefined : URL.revokeObjectURL(preview)), [preview])

  function drop() {
    attempts.current.answered()
    setChosen(null)
    setProblem('')
    setSaid('')
  }

  async function choose(files: FileList | null) {
    const file = files?.[0]
    if (!file) return
    const size = await sizeOf(file)
    drop()
    setChosen({ file, preview: URL.createObjectURL(file), size })
    setSaid('Picture chosen, not in use yet.')
  }

  /** Sends once, and says what came of it. */
  async function carry(send: (op: string) => Promise<Answer<unknown>>, content: unknown, done: string) {
    if (sending.current) return
    sending.current = true
    setPending(true)
    setSaid('')
    const answer = await send(attempts.current.idFor(content))
    sending.current = false
    setPending(false)
    if (answer.answered) attempts.current.answered()
    const refusal = !answer.answered ? answer.refusal : answer.result.ok ? null : answer.result.refusal
    setProblem(refusal?.message ?? '')
    // After a conflict too: the other logo is shown above the one that was chosen.
    if (answer.answered) router.refresh()
    if (refusal && unusable.has(refusal.code)) setChosen(null)
    if (refusal) return
    setChosen(null)
    setSaid(done)
  }

  async function use() {
    if (!chosen) return
    const words = { seen }
    const picture = {
      address: '/api/logo',
      words,
      file: chosen.file,
      what: 'The picture',
      onProgress: () => {},
    }
    await carry((op) => sendFile({ ...picture, op }), ['use', seen], 'Saved. Papers show this logo from now on.')
  }

  const remove = () =>
    carry(
      (op) => callAction(removeLogoAction, { op, input: { seen } }),
      ['remove', seen],
      'Logo removed. Papers show the name only.',
    )

  return { chosen, pending, problem, said, choose, drop, use, remove }
}

async function sizeOf(file: Blob): Promise<Chosen['size']> {
  try {
    const picture = await createImageBitmap(file)
    const { width, height } = picture
    picture.close()
    return { widthPx: width, heightPx: height }
  } catch {
    return null
  }
}
