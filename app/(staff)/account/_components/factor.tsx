'use client'
import { useState } from 'react'
import { ActionForm } from '@/app/_components/form/action-form'
import type { ServerAction } from '@/app/_components/form/call-action'
import { RefusalOrAsk } from '@/app/_components/form/refusal-or-ask'
import { useAction } from '@/app/_components/form/use-action'
import { useActionForm } from '@/app/_components/form/use-action-form'
import { Button } from '@/app/_components/ui/button'
import { CopyText } from '@/app/_components/ui/copy-text'
import { Notice } from '@/app/_components/ui/notice'
import { TextInput } from '@/app/_components/ui/text-input'
import { confirmFactorSchema } from '@/lib/schemas/person'
import type { FactorDraft } from '@/lib/use-cases/people/second-factor'
import { confirmFactorAction, dropFactorAction, renewCodesAction, startFactorAction } from '../actions'
import { QrPicture } from './qr-picture'

type Props = { hasFactor: boolean; codesLeft: number }

/** Sets the second factor up, and says what there is of it. Keys and recovery codes are shown once. */
export function Factor({ hasFactor, codesLeft }: Props) {
  const [draft, setDraft] = useState<FactorDraft | null>(null)
  const [codes, setCodes] = useState<readonly string[] | null>(null)
  if (codes) return <Codes codes={codes} onKept={() => setCodes(null)} />
  if (draft) {
    return (
      <Confirm
        draft={draft}
        onDone={(made) => {
          setDraft(null)
          setCodes(made)
        }}
      />
    )
  }
  return (
    <>
      <p>
        {hasFactor
          ? `Your sign-in asks for a code of your app. ${codesLeft} of your recovery codes are left.`
          : 'Your sign-in asks for your password alone. With a second factor it asks for a code of an app on your phone too.'}
      </p>
      <div className="row">
        <Deed action={startFactorAction} onDone={setDraft}>
          {hasFactor ? 'Set up another app' : 'Set up a second factor'}
        </Deed>
        {hasFactor && (
          <>
            <Deed action={renewCodesAction} onDone={({ codes: made }) => setCodes(made)}>
              New recovery codes
            </Deed>
            <Deed action={dropFactorAction} onDone={() => undefined}>
              Give up the second factor
            </Deed>
          </>
        )}
      </div>
    </>
  )
}

type DeedProps<Value> = {
  action: ServerAction<Record<string, never>, Value>
  onDone: (value: Value) => void
  children: string
}

function Deed<Value>({ action, onDone, children }: DeedProps<Value>) {
  const { run, pending, refusal, refusalRef } = useAction()
  const send = () => run({ action, input: {}, onDone })
  return (
    <div className="stack">
      <div>
        <Button pending={pending} onClick={send}>
          {children}
        </Button>
      </div>
      {refusal && <RefusalOrAsk refusal={refusal} title="Not done" ref={refusalRef} onAgain={send} />}
    </div>
  )
}

type ConfirmProps = { draft: FactorDraft; onDone: (codes: readonly string[]) => void }

function Confirm({ draft, onDone }: ConfirmProps) {
  const form = useActionForm(confirmFactorSchema, confirmFactorAction, {
    defaultValues: { code: '' },
    onDone: ({ codes }) => onDone(codes),
  })
  const groups = draft.key.replace(/(.{4})(?=.)/g, '$1 ')
  return (
    <ActionForm form={form} submitLabel="Use this app">
      <p>Scan this with an authenticator app on your phone, or type the key into it. It is shown only now.</p>
      <QrPicture words={draft.address} />
      <p className="nowrap" style={{ overflowX: 'auto' }}>
        {groups}
      </p>
      <TextInput
        label="Code"
        hint="The six digits that the app shows now."
        required
        inputMode="numeric"
        autoComplete="one-time-code"
        {...form.text('code')}
      />
    </ActionForm>
  )
}

function Codes({ codes, onKept }: { codes: readonly string[]; onKept: () => void }) {
  return (
    <Notice title="Recovery codes, shown only now">
      <p>
        Each signs you in once in place of a code of the app. Print them or write them down; keep them off the phone.
      </p>
      <ul className="plain-list">
        {codes.map((code) => (
          <li key={code}>
            <code>{code}</code>
          </li>
        ))}
      </ul>
      <CopyText text={codes.join('\n')} label="Copy the codes" />
      <div className="row">
        <Button onClick={onKept}>I have kept them</Button>
      </div>
    </Notice>
  )
}
