'use client'
import { ActionForm } from '@/app/_components/form/action-form'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Notice } from '@/app/_components/ui/notice'
import { Select } from '@/app/_components/ui/select'
import { TextInput } from '@/app/_components/ui/text-input'
import { changeMailServerSchema } from '@/lib/schemas/message'
import type { MailServerSeen } from '@/lib/use-cases/messages/see-mail-server'
import { ConflictResolver } from '../../_components/conflict-resolver'
import fields from '../../_components/fields.module.css'
import { changeMailServerAction } from '../actions'

const labels: Readonly<Record<string, string>> = {
  host: 'Host',
  port: 'Port',
  security: 'Encryption',
  user: 'Name',
  password: 'Password',
  fromAddress: 'From',
  replyTo: 'Answers go to',
}

const securities = [
  { value: 'starttls', label: 'STARTTLS, port 587' },
  { value: 'tls', label: 'TLS, port 465' },
  { value: 'none', label: 'None, own network only' },
]

const passwordHints: Readonly<Record<MailServerSeen['password'], string>> = {
  set: 'A password is saved and not shown again. Leave this empty to keep it.',
  none: 'None saved.',
  unreadable: 'The saved password can no longer be read. Enter it again.',
}

export function ServerForm({ server, by }: { server: MailServerSeen; by: string }) {
  const { host, port, security, user, fromAddress, replyTo, version } = server
  const fresh = { host, port: String(port), security, user, password: '', fromAddress, replyTo, version }
  const form = useActionForm(changeMailServerSchema, changeMailServerAction, {
    defaultValues: fresh,
    onDone: () => form.form.resetField('password'),
  })
  return (
    <ActionForm form={form} submitLabel="Save" autoComplete="off">
      <div className={fields.grid}>
        <TextInput label="Host" hint="mail.example.com" {...form.text('host')} />
        <TextInput label="Port" inputMode="numeric" {...form.text('port')} />
        <Select
          label="Encryption"
          hint="None: no password can be sent"
          options={securities}
          {...form.text('security')}
        />
        <TextInput label="Name" hint="Often the mail address" autoComplete="off" {...form.text('user')} />
        <TextInput
          label="Password"
          type="password"
          autoComplete="new-password"
          hint={passwordHints[server.password]}
          {...form.text('password')}
        />
        <TextInput label="From" type="email" hint="Mails come from this address" {...form.text('fromAddress')} />
        <TextInput
          label="Answers go to"
          type="email"
          hint="Empty: to the address above"
          required={false}
          {...form.text('replyTo')}
        />
      </div>
      {form.value && <Notice title="Saved">{form.value.isSet ? 'Send a test mail now.' : 'No mail is sent.'}</Notice>}
      <ConflictResolver
        form={form}
        fresh={fresh}
        what="The mail settings"
        labelOf={(path) => labels[path] ?? path}
        by={by}
      />
    </ActionForm>
  )
}
