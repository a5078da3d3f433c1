'use client'
import { useState } from 'react'
import { useAction } from '@/app/_components/form/use-action'
import type { ImportField } from '@/lib/core/customers/import-columns'
import type { Imported } from '@/lib/use-cases/customers/import-customers'
import type { ImportPreview } from '@/lib/use-cases/customers/preview-import'
import { importCustomersAction, previewImportAction } from '../actions'

type Columns = (ImportField | '')[]

/** A list that is looked at before it is taken: its text, what its columns hold, what would become of its lines. */
export function useImport() {
  const { run, pending, refusal, refusalRef, clear } = useAction()
  const [text, setText] = useState('')
  const [preview, setPreview] = useState<ImportPreview | null>(null)
  const [done, setDone] = useState<Imported | null>(null)

  function type(next: string) {
    clear()
    setText(next)
    setPreview(null)
    setDone(null)
  }

  async function choose(files: FileList | null) {
    const file = files?.[0]
    if (file) type(textOf(new Uint8Array(await file.arrayBuffer())))
  }

  function look(columns: Columns | null) {
    run({ action: previewImportAction, name: 'look', input: { text, columns }, onDone: setPreview })
  }

  function take() {
    if (!preview) return
    const onDone = (imported: Imported) => {
      type('')
      setDone(imported)
    }
    run({ action: importCustomersAction, name: 'take', input: { text, columns: [...preview.columns] }, onDone })
  }

  return { text, type, choose, look, take, preview, done, pending, refusal, refusalRef }
}

/** UTF-8; an older spreadsheet's file that is not is read as Windows-1252. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}
