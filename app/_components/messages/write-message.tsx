'use client'
import { useState } from 'react'
import { useWatch } from 'react-hook-form'
import type { z } from 'zod'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { useActionForm, type ActionForm as Form } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { ActionButton } from '@/app/(staff)/back-room/_components/action-button'
import { sendMessageSchema } from '@/lib/schemas/message'
import type { PreparedMessage } from '@/lib/use-cases/messages/prepare-message'
import type { TextToWrite } from '@/lib/use-cases/messages/see-messages'
import { lackWords, messageKindLabels } from '@/lib/words/messages'
import { prepareMessageAction, sendMessageAction } from './actions'
import type { Prepared, WritingProps, WritingView, Written } from './written'
import styles from './messages.module.css'
import { PreparedText } from './prepared-text'
import { WhereTo } from './where-to'

type Done = { readonly messageId: string } | PreparedMessage

/** Choose a text, see it, change it, and send it: by the shop's mail server, or by one's own means. */
export function WriteMessage({ view, findingId, onDone }: WritingProps) {
  const asked = view.texts.findIndex((text) => findingId !== '' && text.findingId === findingId)
  const [at, setAt] = useState(Math.max(asked, 0))
  const [prepared, setPrepared] = useState<Prepared | null>(null)
  const text = view.texts[at]
  if (!text) return null
  if (prepared) {
    return <PreparedText view={view} prepared={prepared} onDone={onDone} onBack={() => setPrepared(null)} />
  }
  return (
    <div className={`stack ${styles.write}`}>
      <Select
        label="Which text"
        options={view.texts.map((one, place) => ({ value: String(place), label: nameOf(one) }))}
        value={String(at)}
        onChange={(event) => setAt(Number(event.target.value))}
      />
      {text.lacks.length > 0 ? (
        <Notice kind="caution" title="This text cannot be written yet">
          {text.lacks.map((lack) => (
            <p key={lack}>{lackWords[lack]}</p>
          ))}
        </Notice>
      ) : (
        <TextForm key={at} view={view} text={text} onSent={onDone} onPrepared={setPrepared} />
      )}
      <div>
        <Button variant="quiet" onClick={onDone}>
          Cancel
        </Button>
      </div>
    </div>
  )
}

const nameOf = ({ kind, about }: TextToWrite): string =>
  about === '' ? messageKindLabels[kind] : `${messageKindLabels[kind]}: ${about}`

type FormProps = {
  view: WritingView
  text: TextToWrite
  onSent: () => void
  onPrepared: (prepared: Prepared) => void
}

function TextForm({ view, text, onSent, onPrepared }: FormProps) {
  const byServer = view.hasServer && view.hasMail
  const action: ServerAction<Written, Done> = byServer ? sendMessageAction : prepareMessageAction
  const { kind, findingId, subject, body } = text
  const form = useActionForm<Written, z.output<typeof sendMessageSchema>, Done>(sendMessageSchema, action, {
    defaultValues: { jobId: view.jobId, kind, findingId, subject, body },
    onDone: (done) => ('messageId' in done ? onSent() : onPrepared({ written: form.form.getValues(), text: done })),
  })
  return (
    <ActionForm
      form={form}
      submitLabel={byServer ? 'Send by mail' : 'Make the text'}
      actions={byServer && <AnotherWay form={form} onPrepared={onPrepared} />}
    >
      <WhereTo view={view} />
      <TextInput label="Subject" required {...form.text('subject')} />
      <TextArea
        label="Text"
        rows={12}
        required
        hint="{link} becomes the address of the customer’s page when the text is sent. The shop keeps a copy without it."
        {...form.text('body')}
      />
    </ActionForm>
  )
}

type AnotherWayProps = { form: Form<Written, Done>; onPrepared: (prepared: Prepared) => void }

/** The text as it stands on the form, to be sent by other means than the shop's server. */
function AnotherWay({ form, onPrepared }: AnotherWayProps) {
  const written = useWatch({ control: form.form.control }) as Written
  return (
    <ActionButton action={prepareMessageAction} input={written} onDone={(text) => onPrepared({ written, text })}>
      Send another way
    </ActionButton>
  )
}
