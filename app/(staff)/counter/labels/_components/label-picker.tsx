'use client'
import { useRouter } from 'next/navigation'
import { useRef, useState, useTransition } from 'react'
import { LabelForm } from '@/app/_components/papers/label-form'
import { Tag } from '@/app/_components/tag/tag'
import { Button } from '@/app/_components/ui/button'
import { CheckList } from '@/app/_components/ui/choice'
import { Pager } from '@/app/_components/ui/pager'
import { Day } from '@/app/_components/ui/day'
import type { LabelHead, LabelHeads } from '@/lib/use-cases/papers/see-label-heads'
import { AddTag } from './add-tag'
import styles from './label-picker.module.css'
import { labelsHref, mostAdded } from '@/app/_components/papers/labels-href'

/** The heads to pick from, and the way to print what is picked. */
export function LabelPicker({ view, page }: { view: LabelHeads; page: number }) {
  const added = view.asked.map(({ number }) => number)
  const heads = [...view.added, ...view.heads]
  const { picked, setPicked, pick } = usePicked(view)
  const { look, looking } = useLook(added, page)
  // What is picked is picked on the next page, too.
  const toKeep = [...new Set([...picked, ...added])].slice(0, mostAdded)
  const today = heads.filter((head) => head.today).map((head) => head.tag)
  const count = heads.filter((head) => picked.includes(head.tag)).length

  function add(number: string) {
    const asked = view.asked.find((one) => one.number === number)
    if (asked) pick([asked.tag])
    else if (heads.some((head) => head.tag === number)) pick([number])
    else look(number)
  }

  return (
    <>
      <AddTag added={added} looking={looking} onTag={add} />
      <div className="row">
        {today.length > 0 && <Button onClick={() => pick(today)}>Select today’s heads ({today.length})</Button>}
        {count > 0 && <Button onClick={() => setPicked([])}>Clear selection</Button>}
        <p role="status">{count === 0 ? 'None selected' : `${count} selected`}</p>
        <a href="#print" className={styles.down}>
          Go to printing
        </a>
      </div>
      <LabelForm action="/api/papers/tag-labels" className={styles.form}>
        <div className="stack">
          <CheckList
            name="tag"
            label="Heads"
            options={heads.map((head) => ({
              value: head.tag,
              label: <HeadWords head={head} />,
              hint: <CameIn head={head} locale={view.locale} />,
            }))}
            values={picked}
            onChange={({ target: { value, checked } }) =>
              setPicked((all) => (checked ? [...all, value] : all.filter((tag) => tag !== value)))
            }
          />
          <Pager page={page} more={view.more} href={(to) => labelsHref(toKeep, to)} />
        </div>
      </LabelForm>
    </>
  )
}

/** What is picked; what the address asks for is picked once, when it is first seen. */
function usePicked(view: LabelHeads) {
  const asked = view.asked.map(({ tag }) => tag)
  const [picked, setPicked] = useState<readonly string[]>(asked)
  const [seen, setSeen] = useState<readonly string[]>(asked)
  const pick = (tags: readonly string[]) => setPicked((all) => [...new Set([...all, ...tags])])
  const fresh = asked.filter((tag) => !seen.includes(tag))
  if (fresh.length > 0) {
    setSeen([...seen, ...fresh])
    pick(fresh)
  }
  return { picked, setPicked, pick }
}

/** The server knows every tag that was ever worn here; the list holds those of heads that are in. */
function useLook(added: readonly string[], page: number) {
  const router = useRouter()
  const [looking, start] = useTransition()
  const wanted = useRef(added)

  function look(number: string) {
    // A scanner is quicker than an answer: a look asks for all that is still looked for, too; what was not found is gone.
    const before = looking ? wanted.current : added
    wanted.current = [...new Set([...before, number])].slice(-mostAdded)
    start(() => router.replace(labelsHref(wanted.current, page), { scroll: false }))
  }
  return { look, looking }
}

const HeadWords = ({ head }: { head: LabelHead }) => (
  <span className="row">
    <Tag number={head.tag} size="s" />
    <span>job {head.jobNumber}</span>
    <span>{head.what}</span>
  </span>
)

const CameIn = ({ head, locale }: { head: LabelHead; locale: string }) => (
  <>
    {head.checkedIn ? 'came in' : 'tagged'} <Day on={head.on} locale={locale} />
    {!head.checkedIn && ', not checked in yet'}
  </>
)
