import type { Metadata } from 'next'
import { orNotFound } from '@/lib/web/or-not-found'
import { MessagesPart } from '@/app/_components/messages/messages-part'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { seeJob } from '@/lib/use-cases/jobs/see-job'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { requirePerson } from '@/lib/web/require-actor'
import { AccountPart } from './_components/account-part'
import { BookedNotice } from './_components/booked-notice'
import { CallsPart } from './_components/calls-part'
import { EnginePart } from './_components/engine-part'
import { FindingsPart } from './_components/findings-part'
import { JobHeader } from './_components/job-header'
import { OutPart } from './_components/out-part'
import { PairPart } from './_components/pair-part'
import { SupplyPart } from './_components/supply-part'
import { PapersPart } from './_components/papers-part'
import { WantedPart } from './_components/wanted-part'
import styles from './_components/job.module.css'

type Props = { params: Promise<{ number: string }>; searchParams: Promise<{ booked?: string | string[] }> }

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Job ${(await params).number}` }
}

export default async function JobPage({ params, searchParams }: Props) {
  const { number } = await params
  const { booked } = await searchParams
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  const job = await orNotFound(seeJob(actor, { number, now: new Date() }))
  return (
    <>
      <AutoRefresh newest={newest} />
      {(booked === '1' || booked === 'unplanned') && <BookedNotice job={job} notPlanned={booked === 'unplanned'} />}
      <JobHeader job={job} />
      <div className={styles.desk}>
        <div className="stack">
          {job.pairs.map((pair) => (
            <PairPart key={pair.id} job={job} pair={pair} />
          ))}
          <FindingsPart job={job} />
          <SupplyPart job={job} />
          <EnginePart job={job} />
          <MessagesPart actor={actor} number={number} />
          <CallsPart job={job} />
        </div>
        <div className="stack">
          {job.account && <AccountPart job={job} account={job.account} />}
          <PapersPart job={job} />
          <OutPart job={job} />
          <WantedPart job={job} />
        </div>
      </div>
    </>
  )
}
