'use client'
import { useEffect, useEffectEvent, useRef, useState } from 'react'
import type { FieldValues } from 'react-hook-form'
import { tabDraft, type TabDraft } from './draft-shapes'
import { clearDraft, draftKeys, loadDraft, moveDraft, saveDraft } from './draft-store'
import { newId } from './new-id'
import { openTabs } from './open-tabs'
import type { ActionForm } from './use-action-form'

export type OfferedDraft = { readonly key: string; readonly name: string; readonly at: string }

export type TabDrafts = {
  readonly restored: boolean
  readonly discard: () => void
  /** Left by tabs that are closed, newest first. */
  readonly offered: readonly OfferedDraft[]
  readonly takeUp: (key: string) => void
  readonly remove: (key: string) => void
}

type Of<Values> = {
  /** What is typed here: "book a job". All of a kind are offered to each other. */
  readonly kind: string
  /** What the form begins with, where it can begin with several things: "estimate=…". */
  readonly variant: string
  /** By which a person knows a draft again. */
  readonly nameOf: (values: Values) => string
}

/** What nobody came back for in so many days goes. */
const keptDays = 30
const mostOffered = 5

const draftAt = (key: string): string => `tab-draft ${key}`

/**
 * Keeps what is typed for this tab alone, through a reload, until the server has taken it. What a closed tab left is
 * offered by name and time. Show `<TabDraftNotice drafts={…} />` above the form.
 */
export function useTabDraft<Values extends FieldValues, Value>(
  { kind, variant, nameOf }: Of<Values>,
  { form, ids, whenDone }: ActionForm<Values, Value>,
): TabDrafts {
  const [restored, setRestored] = useState(false)
  const [offered, setOffered] = useState<readonly OfferedDraft[]>([])
  const own = useRef<string | null>(null)
  const nameNow = useEffectEvent(nameOf)

  const drop = (key: string) => setOffered((now) => now.filter((one) => one.key !== key))

  async function show(key: string): Promise<boolean> {
    ids.current.keepUnder(key)
    const draft = await loadDraft(draftAt(key), tabDraft)
    if (!draft) return false
    form.reset({ ...form.getValues(), ...(draft.values as Partial<Values>) }, { keepDefaultValues: true })
    setRestored(true)
    return true
  }
  const showOwn = useEffectEvent(show)

  useEffect(() => {
    let left = false
    let typed = false
    let key: string | null = null
    const save = () => {
      typed = true
      if (key === null) return
      const values = form.getValues()
      saveDraft<TabDraft>(draftAt(key), { shape: 1, values, name: nameNow(values), at: new Date().toISOString() })
    }
    const ends = [form.subscribe({ formState: { values: true }, callback: save })]
    const holds = (tab: string) => `${kind} ${tab} ${variant}`.trim()
    void (async () => {
      const tabs = await openTabs(holds)
      if (left) return tabs.close()
      ends.push(tabs.close)
      const mine = holds(tabs.tab)
      own.current = mine
      // What was typed while the other tabs were asked stays: what this tab had before is offered.
      if (typed) moveDraft(draftAt(mine), draftAt(holds(newId())))
      else await showOwn(mine)
      if (left) return
      key = mine
      if (typed) save()
      setOffered(await draftsLeft(kind, new Set([...tabs.held, mine])))
    })()
    const stopListening = whenDone(() => {
      ends.splice(0).forEach((end) => end())
      if (own.current !== null) clearDraft(draftAt(own.current))
      setRestored(false)
    })
    return () => {
      left = true
      ends.splice(0).forEach((end) => end())
      stopListening()
    }
  }, [kind, variant, form, whenDone])

  async function takeUp(key: string) {
    const to = own.current
    drop(key)
    if (to === null) return
    moveDraft(draftAt(key), draftAt(to))
    // An attempt that got no answer goes on under its own number: it is not done twice.
    moveDraft(`attempt ${key}`, `attempt ${to}`)
    await show(to)
  }

  const remove = (key: string) => {
    clearDraft(draftAt(key))
    clearDraft(`attempt ${key}`)
    drop(key)
  }

  const discard = () => {
    form.reset()
    if (own.current !== null) clearDraft(draftAt(own.current))
    setRestored(false)
  }

  return { restored, discard, offered, takeUp: (key) => void takeUp(key), remove }
}

/** Drafts of this kind that no open tab holds. */
async function draftsLeft(kind: string, held: ReadonlySet<string>): Promise<OfferedDraft[]> {
  const start = draftAt('')
  const keys = draftKeys(draftAt(`${kind} `)).map((key) => key.slice(start.length))
  const drafts = await Promise.all(
    keys.filter((key) => !held.has(key)).map(async (key) => ({ key, draft: await loadDraft(draftAt(key), tabDraft) })),
  )
  const oldest = new Date(Date.now() - keptDays * 86_400_000).toISOString()
  for (const { key, draft } of drafts) if (draft && draft.at < oldest) clearDraft(draftAt(key))
  return drafts
    .flatMap(({ key, draft }) => (draft && draft.at >= oldest ? [{ key, name: draft.name, at: draft.at }] : []))
    .sort((a, b) => b.at.localeCompare(a.at))
    .slice(0, mostOffered)
}
