'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { Check } from '@/app/_components/ui/check'
import { TextArea } from '@/app/_components/ui/text-area'
import { TextInput } from '@/app/_components/ui/text-input'
import { placeholdersOf } from '@/lib/core/messages/wording'
import { changeTextSchema } from '@/lib/schemas/message'
import type { TextSeen } from '@/lib/use-cases/messages/see-texts'
import { byItselfLabels, defaultWording, placeholderLabels } from '@/lib/words/messages'
import { ConflictResolver } from '../../_components/conflict-resolver'
import fields from '../../_components/fields.module.css'
import { changeTextAction } from '../actions'

const labels: Readonly<Record<string, string>> = { subject: 'Subject', body: 'Text', byItself: 'Goes out by itself' }

export function TextForm({ text, hasServer, by }: { text: TextSeen; hasServer: boolean; by: string }) {
  const { kind } = text
  const fresh = { ...text }
  const form = useActionForm(changeTextSchema, changeTextAction, { defaultValues: fresh })
  function useOurs() {
    const { subject, body } = defaultWording[kind]
    form.form.setValue('subject', subject, { shouldDirty: true, shouldValidate: true })
    form.form.setValue('body', body, { shouldDirty: true, shouldValidate: true })
  }
  return (
    <ActionForm
      form={form}
      submitLabel="Save"
      actions={
        <Button variant="quiet" onClick={useOurs}>
          Use the wording that comes with the app
        </Button>
      }
    >
      <TextInput label="Subject" required {...form.text('subject')} />
      <TextArea
        label="Text"
        rows={12}
        required
        hint="A line with something in braces that is not known for a job is left out."
        {...form.text('body')}
      />
      <details open>
        <summary>What can stand in braces</summary>
        <ul className={fields.tight}>
          {placeholdersOf[kind].map((name) => (
            <li key={name}>
              <code>{`{${name}}`}</code> {placeholderLabels[name]}
            </li>
          ))}
        </ul>
      </details>
      <Check
        label={`Send it by itself ${byItselfLabels[kind]}`}
        hint={
          hasServer
            ? 'To customers with a mail address. Nobody looks at it before it leaves.'
            : 'Only with a mail server of the shop: enter it first.'
        }
        disabled={!hasServer && !text.byItself}
        {...form.text('byItself')}
      />
      <ConflictResolver form={form} fresh={fresh} what="The text" labelOf={(path) => labels[path] ?? path} by={by} />
    </ActionForm>
  )
}
