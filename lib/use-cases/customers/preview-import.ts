import { allow } from '@/lib/core/access/can'
import type { Actor } from '@/lib/core/access/roles'
import { must } from '@/lib/core/errors'
import { db } from '@/lib/data/db'
import type { ImportInput } from '@/lib/schemas/customer'
import { importPlan, type ImportPlan, type LeftOut } from './import-plan'

export type ImportPreview = Pick<ImportPlan, 'heading' | 'columns'> & {
  readonly count: number
  readonly first: ImportPlan['take']
  readonly bad: readonly LeftOut[]
  readonly badCount: number
  readonly doubled: readonly LeftOut[]
  readonly doubledCount: number
}

const mostShown = 100

/** What of a list would be taken: how many, the first of them, and each line that would not. Nothing is changed. */
export async function previewImport(actor: Actor, input: ImportInput): Promise<ImportPreview> {
  must(allow(actor, 'customer.change'))
  const { heading, columns, take, bad, doubled } = await importPlan(await db(), input)
  return {
    ...{ heading, columns, count: take.length, first: take.slice(0, 5) },
    ...{ bad: bad.slice(0, mostShown), badCount: bad.length },
    ...{ doubled: doubled.slice(0, mostShown), doubledCount: doubled.length },
  }
}
