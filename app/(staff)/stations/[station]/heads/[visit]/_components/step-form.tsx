'use client'
import { useRouter } from 'next/navigation'
import { useEffect, useRef, useState, useTransition } from 'react'
import { OperationIds } from '@/app/_components/form/operation-ids'
import { callAction } from '@/app/_components/form/call-action'
import { clearDraft, saveDraft, loadDraft } from '@/app/_components/form/draft-store'
import { RefusalNotice } from '@/app/_components/form/refusal-notice'
import { Button } from '@/app/_components/ui/button'
import { ConflictNotice } from '@/app/_components/ui/conflict-notice'
import { Select } from '@/app/_components/ui/select'
import type { Refusal } from '@/lib/core/errors'
import { theirsAtText } from '@/lib/words/conflicts'
import type { StepScreen } from '@/lib/use-cases/stations/see-step'
import { recordReadingsAction, startStepAction, tickStepAction } from '../../../../actions'
import { fieldGroups, typedReadings, type Answers } from './answers'
import { FlowConditions } from './flow-conditions'
import { StepFields } from './step-fields'
import styles from './step.module.css'

type Kept = {
  readonly answers: Answers
  readonly conditions: Record<string, string>
  readonly instrumentId: string
}

const nothing: Kept = { answers: {}, conditions: {}, instrumentId: '' }

function restore(key: string, conditions: Record<string, string>): Kept {
  const text = loadDraft(key)
  return text === null ? { ...nothing, conditions } : { ...nothing, ...(JSON.parse(text) as Partial<Kept>) }
}

type Props = {
  screen: StepScreen
  /** Number of the repeat of a flow run that is entered; left out: the step itself, which is then ticked. */
  repeat?: number
  onRepeated?: () => void
}

/** The one thing to do at this step: the readings it owes and one large button. Nothing typed is lost. */
export function StepForm({ screen, repeat, onRepeated }: Props) {
  const { step, visitId } = screen
  const draftKey = `step ${visitId} ${step.stepId} ${step.occurrence} ${step.orderId ?? ''} ${repeat ?? ''}`
  const router = useRouter()
  const [state, setState] = useState<Kept>({ ...nothing, conditions: { ...screen.lastConditions } })
  const [refusal, setRefusal] = useState<Refusal | null>(null)
  const [said, setSaid] = useState('')
  const [pending, start] = useTransition()
  const attempts = useRef(new OperationIds())
  const notice = useRef<HTMLDivElement>(null)

  useEffect(() => setState(restore(draftKey, { ...screen.lastConditions })), [draftKey, screen.lastConditions])

  function change(part: Partial<Kept>) {
    const next = { ...state, ...part }
    setState(next)
    saveDraft(draftKey, JSON.stringify(next))
  }

  const hasFields = screen.fields.length > 0
  const key = { stepId: step.stepId, occurrence: step.occurrence, orderId: step.orderId }

  function send(what: 'tick' | 'record' | 'start', seen = screen.seen) {
    const entry = {
      readings: typedReadings(state.answers),
      instrumentId: state.instrumentId === '' ? null : state.instrumentId,
      conditions: step.stepId === 'flow' ? { ...state.conditions, run: String(repeat ?? 1) } : {},
      takenAt: null,
    }
    const input = { visitId, step: key, seen }
    start(async () => {
      setSaid('')
      const answer =
        what === 'tick'
          ? await call(tickStepAction, { ...input, entry: hasFields ? entry : null })
          : what === 'record'
            ? await call(recordReadingsAction, { ...input, entry })
            : await call(startStepAction, input)
      if (answer) return refuse(answer)
      setRefusal(null)
      if (what !== 'start') {
        clearDraft(draftKey)
        setState({ ...nothing, conditions: state.conditions })
      }
      setSaid(
        what === 'tick' ? 'Ticked.' : what === 'record' ? 'Readings kept. The step is not ticked yet.' : 'Started.',
      )
      if (repeat !== undefined) onRepeated?.()
      router.refresh()
    })
  }

  /** null when the server took it; else why not. */
  async function call<I, T>(action: Parameters<typeof callAction<I, T>>[0], input: I): Promise<Refusal | null> {
    const answer = await callAction(action, { op: attempts.current.idFor(input), input })
    if (!answer.answered) return answer.refusal
    attempts.current.answered()
    return answer.result.ok ? null : answer.result.refusal
  }

  function refuse(why: Refusal) {
    setRefusal(why)
    setTimeout(() => notice.current?.focus())
  }

  function takeTheirs() {
    clearDraft(draftKey)
    setState({ ...nothing, conditions: { ...screen.lastConditions } })
    setRefusal(null)
    router.refresh()
  }

  const typed = typedReadings(state.answers)
  return (
    <section aria-label={step.label} className="stack" data-hands-on={typed.length > 0 ? '' : undefined}>
      {fieldGroups(screen.fields).map((fields) => (
        <StepFields
          key={fields[0]?.kind}
          fields={fields}
          answers={state.answers}
          errors={refusal?.fields ?? {}}
          photoTo={{ visitId, stepId: step.stepId, occurrence: step.occurrence }}
          onChange={(answers) => change({ answers })}
        />
      ))}
      {step.stepId === 'flow' && (
        <FlowConditions values={state.conditions} onChange={(conditions) => change({ conditions })} />
      )}
      {screen.fields.some((field) => field.spec.form === 'figure') && screen.instruments.length > 0 && (
        <Select
          label="Read with"
          required={false}
          empty="Not named"
          value={state.instrumentId}
          onChange={(event) => change({ instrumentId: event.target.value })}
          options={screen.instruments.map((one) => ({
            value: one.id,
            label: one.lastCheckedOn ? `${one.name}, checked ${one.lastCheckedOn}` : one.name,
          }))}
        />
      )}
      {refusal?.code === 'conflict' && refusal.theirs ? (
        <ConflictNotice
          what={step.label}
          yours={
            typed.length === 0 ? 'Your tick' : typed.map((one) => `${one.point} ${one.notTaken ?? one.text}`).join(', ')
          }
          theirs={theirsAtText(refusal.theirs, screen)}
          pending={pending}
          onKeepYours={() => send('tick', Number.MAX_SAFE_INTEGER)}
          onTakeTheirs={takeTheirs}
        />
      ) : (
        refusal && (
          <RefusalNotice refusal={refusal} title={repeat === undefined ? 'Not ticked' : 'Not saved'} ref={notice} />
        )
      )}
      <p role="status">{said}</p>
      {repeat !== undefined ? (
        <Button
          variant="main"
          className={styles.main}
          pending={pending}
          disabled={typed.length === 0}
          onClick={() => send('record')}
        >
          Save run {repeat}
        </Button>
      ) : (
        <>
          <Button variant="main" className={styles.main} pending={pending} onClick={() => send('tick')}>
            {hasFields ? `Save and tick: ${step.label}` : `Tick: ${step.label}`}
          </Button>
          <div className="row">
            {hasFields && (
              <Button pending={pending} onClick={() => send('record')}>
                Save the readings only
              </Button>
            )}
            {step.state !== 'started' && (
              <Button pending={pending} onClick={() => send('start')}>
                Start
              </Button>
            )}
          </div>
        </>
      )}
    </section>
  )
}
