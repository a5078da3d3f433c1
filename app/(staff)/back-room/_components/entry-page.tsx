import { cache, type ReactElement } from 'react'
import type { Action } from '@/lib/core/access/table'
import type { Actor } from '@/lib/core/access/roles'
import { orNotFound } from '@/lib/web/or-not-found'
import { requirePerson } from '@/lib/web/require-actor'
import { PageHead } from './page-head'

type EntryProps = { params: Promise<{ id: string }> }

/**
 * The page of one entry of a list. `see` gives what it shows with the person who looks, read once for the title and the
 * page; no such entry, or not for this person: the page that says so.
 */
export function entryPage<Seen extends object>(
  may: Action,
  read: (actor: Actor, id: string) => Promise<Seen>,
  titleOf: (seen: Seen) => string,
) {
  const seeId = cache(async (id: string) => {
    const actor = await requirePerson(may)
    return { actor, ...(await orNotFound(read(actor, id))) }
  })
  const see = async ({ params }: EntryProps) => seeId((await params).id)
  return { see, generateMetadata: async (props: EntryProps) => ({ title: titleOf(await see(props)) }) }
}

/** The page that adds an entry to a list. */
export function newEntryPage(
  may: Action,
  up: readonly [href: string, name: string],
  title: string,
  form: ReactElement,
) {
  return {
    metadata: { title },
    async Page() {
      await requirePerson(may)
      return (
        <>
          <PageHead up={up} title={title} />
          {form}
        </>
      )
    },
  }
}
