import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must, RefusedError } from '@/lib/core/errors'
import { labelsOnSheet } from '@/lib/core/shop/label-grid'
import { headName, isTag } from '@/lib/core/shop/tag-number'
import { db, type Reader } from '@/lib/data/db'
import { labelVisitsOfJob, type LabelVisit } from '@/lib/data/label-heads'
import { paperJob } from '@/lib/data/papers'
import { shopOf } from '@/lib/data/shop'
import { tagLabel, tagSheet } from '@/lib/pdf/tag-label'
import { headsByTag } from './heads-by-tag'
import { keptPaper, type Paper } from '@/lib/papers/kept-paper'
import { printSetting } from '@/lib/papers/print-spec'
import { castingWords, sideWords } from '@/lib/dossier/spec/spec-words'
import { qrTextOf } from './tag-address'

export type LabelsAsked = {
  /** The first free place on a sheet of labels, 1 to 27; null: a label printer, a page a label. */
  readonly first: number | null
  /** The heads to print for; of one job none means all. */
  readonly tags: readonly string[]
}

const allLabels: LabelsAsked = { first: null, tags: [] }

/** A label a head of one job, to be tied on beside the tag. */
export async function printTagLabels(actor: Actor, number: string, now: Date, asked = allLabels): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  const client = await db()
  const job = await paperJob(client, number)
  const visits = await labelVisitsOfJob(client, job.id)
  const isWanted = (tag: string) => asked.tags.length === 0 || asked.tags.includes(tag)
  const tagged = visits.filter((visit) => isTag(nameOf(visit)) && isWanted(nameOf(visit)))
  if (tagged.length === 0) {
    throw new RefusedError({
      code: 'wrong-state',
      message: 'No head of this job has a tag yet. Receive the heads and tag them first.',
    })
  }
  return labelPaper(client, tagged, { first: asked.first, name: `tags-${job.number}.pdf`, now })
}

/** Labels for heads of any jobs, in the order asked, a head once. An old number prints the one that is worn now. */
export async function printLabelsOfTags(actor: Actor, asked: LabelsAsked, now: Date): Promise<Paper> {
  must(allow(actor, 'paper.print'))
  if (asked.tags.length === 0) {
    throw new RefusedError({ code: 'invalid', message: 'Pick the heads to print labels for.' })
  }
  const client = await db()
  const { visits, unknown } = await headsByTag(client, asked.tags)
  if (unknown.length > 0) {
    const message = `Tag not found: ${unknown.join(', ')}. Check the number on the tag.`
    throw new RefusedError({ code: 'not-found', message })
  }
  const bare = visits.filter((visit) => !visit.head.tags.some(({ to }) => to === null))
  if (bare.length > 0) {
    const message = `${bare.map(nameOf).join(', ')} was removed and the head has no tag. Assign a tag first.`
    throw new RefusedError({ code: 'wrong-state', message })
  }
  return labelPaper(client, visits, { first: asked.first, name: 'tag-labels.pdf', now })
}

const nameOf = ({ head, job, position }: LabelVisit): string => headName(head.tags, job.number, position)

type Printing = { readonly first: number | null; readonly name: string; readonly now: Date }

async function labelPaper(
  reader: Reader,
  visits: readonly LabelVisit[],
  { first, name, now }: Printing,
): Promise<Paper> {
  if (first !== null && (first < 1 || first > labelsOnSheet)) {
    const message = `A sheet has ${labelsOnSheet} labels. Enter a first free label from 1 to ${labelsOnSheet}.`
    throw new RefusedError({ code: 'invalid', message })
  }
  const shop = await shopOf(reader)
  const labels = visits.map((visit) => ({
    language: shop.locale,
    tag: nameOf(visit),
    qrText: qrTextOf(nameOf(visit)),
    shopName: shop.name,
    jobNumber: visit.job.number,
    casting: castingWords({ visit }),
    side: sideWords(visit.side),
  }))
  const kept = { name, setting: printSetting(shop, now) }
  return first === null
    ? keptPaper({ ...kept, kind: 'tag-labels', data: labels }, tagLabel)
    : keptPaper({ ...kept, kind: 'tag-sheet', data: { first, labels } }, ({ first, labels }, setting) =>
        tagSheet(labels, first, setting),
      )
}
