'use client'
import { useEffect, useMemo, useRef, useState } from 'react'
import { BenchAnswer } from '@/app/_components/bench/bench-answer'
import { useBenchCasting } from '@/app/_components/bench/use-bench-casting'
import { TakenOver } from '@/app/_components/form/taken-over'
import { usePicks } from '@/app/_components/pick/use-picks'
import { Busy } from '@/app/_components/ui/busy'
import { Notice } from '@/app/_components/ui/notice'
import { questionOf } from '@/lib/core/options/question-of'
import { benchQuery, readBench, type BenchForm } from '@/lib/schemas/bench-question'
import type { BenchView } from '@/lib/use-cases/cut-bench/see-bench'
import { BenchActions } from './bench-actions'
import { BenchQuestionFields } from './bench-question-fields'
import { startOf, typedIn } from './typed-field'

/** The question of the counter and the telephone, answered as it is typed, without asking the server. */
export function Bench({ view, initial }: { view: BenchView; initial: BenchForm }) {
  const fields = useRef<HTMLFormElement>(null)
  const [typed, setTyped] = useState(initial)
  const read = () => {
    const { current } = fields
    if (current) setTyped(typedIn(current, typed))
  }
  const castings = usePicks('castings', view.castings, [typed.castingId])
  const { casting, loading, failed } = useBenchCasting(typed.castingId, view.casting)
  const { asked, errors } = useMemo(() => readBench(typed), [typed])
  const question = useMemo(() => questionOf(asked, casting, view.shop), [asked, casting, view.shop])
  const query = withCustomer(benchQuery(typed), view.forWhom)
  useKeptInAddress(query)
  return (
    <div className="stack-large">
      <h1>Can we reach this {casting?.chamberShape === 'flat-deck' ? 'thickness' : 'cc'}?</h1>
      {view.forWhom && <p>For {view.forWhom.name}</p>}
      <form ref={fields} onChange={read} onSubmit={(event) => event.preventDefault()}>
        <TakenOver>
          <BenchQuestionFields
            text={(name) => ({ name, ...startOf(typed, name), error: errors[name] })}
            castings={castings}
            castingId={typed.castingId}
            record={casting?.facts ?? {}}
            hasTarget={asked.targetCc !== null}
            shape={casting?.chamberShape ?? 'open'}
          />
        </TakenOver>
      </form>
      <Busy when={loading} label="Fetching the casting’s record" />
      {failed && (
        <Notice kind="caution">
          <p>
            The casting record could not be loaded. The answer uses only what is typed. Choose the casting again to
            retry.
          </p>
        </Notice>
      )}
      {!loading && (
        <BenchAnswer
          question={question}
          casting={casting}
          money={view.money}
          onNeed={goToField}
          actions={(chosen) => (
            <BenchActions key={chosen.way.id} chosen={chosen} typed={typed} query={query} view={view} />
          )}
        />
      )}
    </div>
  )
}

/** By the id only: an address is handed on, and no name stands in it. */
function withCustomer(query: string, forWhom: BenchView['forWhom']): string {
  if (forWhom === null) return query
  return [query, `customer=${encodeURIComponent(forWhom.id)}`].filter(Boolean).join('&')
}

/** The address says what is asked, so that it can be handed to a colleague and survives a reload. */
function useKeptInAddress(query: string) {
  useEffect(() => {
    const timer = setTimeout(() => {
      window.history.replaceState(window.history.state, '', query === '' ? '/cut-bench' : `/cut-bench?${query}`)
    }, 300)
    return () => clearTimeout(timer)
  }, [query])
}

/** Opens the part of the form that the field stands in, and goes there. */
function goToField(key: string) {
  const names = [key, `engine.${key}`, `figures.${key}`]
  const field = names.flatMap((name) => [...document.getElementsByName(name)])[0]
  field?.closest('details')?.setAttribute('open', '')
  field?.focus()
}
