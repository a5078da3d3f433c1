import { Link } from '@/app/_components/ui/link'
import { z } from 'zod'
import { notFound } from 'next/navigation'
import { cache } from 'react'
import { AutoRefresh } from '@/app/_components/auto-refresh'
import { Tag } from '@/app/_components/tag/tag'
import { ButtonLink } from '@/app/_components/ui/button-link'
import { DefinitionList } from '@/app/_components/ui/definition-list'
import { EmptyState } from '@/app/_components/ui/empty-state'
import { seeHead, type HeadView } from '@/lib/use-cases/heads/see-head'
import { seeHeadPhotos } from '@/lib/use-cases/photos/see-photos'
import { newestChange } from '@/lib/use-cases/shop/newest-change'
import { shopLocale } from '@/lib/use-cases/shop/shop-locale'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { HeadPhotos } from './_components/head-photos'
import { TagChange } from './_components/tag-change'
import { Trends } from './_components/trends'
import { Visit } from './_components/visit'

type Props = { params: Promise<{ id: string }> }

const see = cache(async (id: string) => {
  if (!z.uuid().safeParse(id).success) notFound()
  const actor = await requirePerson('job.see')
  const newest = await newestChange()
  return { actor, newest, head: await orNotFound(seeHead(actor, id)) }
})

export async function generateMetadata({ params }: Props) {
  const { head } = await see((await params).id)
  return { title: `${head.tag}: ${head.casting}` }
}

export default async function HeadPage({ params }: Props) {
  const { actor, newest, head } = await see((await params).id)
  const [shown, manner] = await Promise.all([seeHeadPhotos(actor, head.headId, new Date()), shopLocale()])
  return (
    <>
      <AutoRefresh newest={newest} />
      <div className="row spread">
        <div className="row">
          <Tag number={head.tag} size="l" />
          <h1>{head.casting}</h1>
        </div>
        <ButtonLink href={`/heads/${head.headId}/flow`}>Flow runs</ButtonLink>
      </div>
      <DefinitionList items={facts(head)} />
      {head.may.tag && <TagChange head={head} />}
      {head.visits.length === 0 ? (
        <EmptyState title="This head has not been on a job yet.">
          <Link href="/counter/book">Book a job</Link>
        </EmptyState>
      ) : (
        <>
          {head.visits.slice(0, 1).map((visit) => (
            <Visit key={visit.visitId} visit={visit} head={head} manner={manner} newest shown={shown} />
          ))}
          <HeadPhotos head={head} shown={shown} />
          <Trends head={head} />
          {head.visits.slice(1).map((visit) => (
            <Visit key={visit.visitId} visit={visit} head={head} manner={manner} newest={false} shown={shown} />
          ))}
        </>
      )}
    </>
  )
}

const facts = (head: HeadView) =>
  [
    { label: 'Own stamp', value: head.stamp },
    { label: 'Casting marks', value: head.marks },
    { label: 'Material', value: head.material },
    { label: 'Chambers', value: head.chambers === 0 ? '' : String(head.chambers) },
    { label: 'Earlier tags', value: head.oldTags.join(', ') },
  ].filter((item) => item.value !== '')
