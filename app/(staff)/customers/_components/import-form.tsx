'use client'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { TakenOver } from '@/app/_components/form/taken-over'
import { Busy } from '@/app/_components/ui/busy'
import { Button } from '@/app/_components/ui/button'
import { FileButton } from '@/app/_components/ui/file-button'
import { TextArea } from '@/app/_components/ui/text-area'
import { ImportShown } from './import-shown'
import { useImport } from './use-import'

/** A list is chosen or pasted, looked at, and then taken. */
export function ImportForm() {
  const list = useImport()
  const { text, preview, done, pending, refusal } = list
  return (
    <div className="stack">
      <div className="row">
        <FileButton label="Choose a CSV file" accept=".csv,.txt,.tsv,text/csv,text/plain" onPick={list.choose} />
      </div>
      <TakenOver>
        <TextArea
          label="Table"
          hint="Or paste it here, headings first"
          rows={8}
          value={text}
          onChange={(event) => list.type(event.target.value)}
        />
      </TakenOver>
      {refusal && <RefusalNotice refusal={refusal} title="Not read" ref={list.refusalRef} />}
      {preview && (
        <ImportShown
          preview={preview}
          onColumn={(at, field) => list.look(preview.columns.map((one, place) => (place === at ? field : one)))}
        />
      )}
      <div className="row">
        {preview && preview.count > 0 && (
          <Button variant="main" pending={pending} onClick={list.take}>
            {preview.count === 1 ? 'Import 1 customer' : `Import ${preview.count} customers`}
          </Button>
        )}
        <Button
          variant={preview ? 'plain' : 'main'}
          pending={pending}
          disabled={text.trim() === ''}
          onClick={() => list.look(preview ? [...preview.columns] : null)}
        >
          Check the list
        </Button>
      </div>
      <Busy when={pending} label="Reading…" />
      <p role="status">
        {done && `Imported ${done.added}. Left out: ${done.bad} with errors, ${done.doubled} already known.`}
      </p>
    </div>
  )
}
