import 'server-only'
import { typedFigure } from '@/lib/core/units/typed-figure'
import type { WantedFigures } from '@/lib/core/wanted/figures'
import { nextNumber } from './counters'
import { putHeadText } from './find-texts'
import { newId } from './ids'
import { wantedOnJob } from './stored/wanted'
import type { Write } from './write'

/** A figure as it is kept; null: not known. */
export type Kept = { readonly value: number; readonly text: string; readonly unit: string } | null

export type NewJob = {
  readonly customerId: string
  readonly preset: string
  readonly promiseOn: string | null
  readonly urgent: boolean
  readonly partsPlace: string
  readonly note: string
  readonly classFlatOnly: boolean
  readonly classMinCc: Kept
  readonly classMaxCut: Kept
  readonly finishAsked: string
  readonly wanted: WantedFigures
  readonly pricesOnLink: boolean
  readonly estimateId: string | null
  readonly benchQuery: string
}

/** The job and its number, "26-0117": the year is that of `today` in the shop's zone. */
export async function addJob(ctx: Write, today: string, job: NewJob): Promise<{ id: string; number: string }> {
  const { classMinCc, classMaxCut, wanted, ...rest } = job
  const year = today.slice(2, 4)
  const number = `${year}-${String(await nextNumber(ctx.tx, `job-${year}`)).padStart(4, '0')}`
  const id = newId(ctx.now)
  await ctx.tx.job.create({
    data: {
      ...rest,
      id,
      number,
      classMinCc: classMinCc?.value ?? null,
      classMinText: classMinCc ? typedFigure(classMinCc) : '',
      classMaxCutIn: classMaxCut?.value ?? null,
      classMaxCutText: classMaxCut ? typedFigure(classMaxCut) : '',
      wanted: wantedOnJob.write(wanted),
      createdAt: ctx.now,
      byId: ctx.actor.personId,
    },
  })
  return { id, number }
}

export type NewEngine = {
  readonly label: string
  readonly layout: string
  readonly camInHead: boolean | null
  readonly valvesInBlock: boolean
  readonly figures: Readonly<Record<string, Kept>>
}

/** The engine of a job, put in place of what was known of it. */
export async function putEngine(ctx: Write, jobId: string, engine: NewEngine): Promise<void> {
  const { figures, ...rest } = engine
  const { id } = await ctx.tx.engine.upsert({
    where: { jobId },
    create: { id: newId(ctx.now), jobId, ...rest },
    update: rest,
    select: { id: true },
  })
  await ctx.tx.engineFigure.deleteMany({ where: { engineId: id } })
  await ctx.tx.engineFigure.createMany({
    data: Object.entries(figures).flatMap(([key, figure]) =>
      figure ? [{ id: newId(ctx.now), engineId: id, key, ...figure }] : [],
    ),
  })
}

export type NewHead = {
  readonly stamp: string
  readonly marks: string
  readonly material: string
  readonly castingId: string | null
  readonly chamberForm: string
}

export async function addHead(ctx: Write, head: NewHead): Promise<string> {
  const id = newId(ctx.now)
  const marksLower = `${head.stamp} ${head.marks}`.trim().toLowerCase()
  await ctx.tx.head.create({
    data: { ...head, id, marksLower, newThicknessText: '', note: '', createdAt: ctx.now },
  })
  await putHeadText(ctx.tx, id)
  ctx.audit({ action: 'head.add', subjectId: id, changes: head })
  return id
}

/** A head that was here before without a casting record gets the one that was named now. */
export async function nameCasting(ctx: Write, headId: string, castingId: string): Promise<void> {
  await ctx.tx.head.update({ where: { id: headId }, data: { castingId, version: { increment: 1 } } })
  await putHeadText(ctx.tx, headId)
  ctx.audit({ action: 'head.change-casting', subjectId: headId, changes: { castingId } })
}

export async function addPair(ctx: Write, jobId: string, castingId: string | null): Promise<string> {
  const id = newId(ctx.now)
  await ctx.tx.pair.create({ data: { id, jobId, castingId } })
  return id
}

export type NewVisit = {
  readonly jobId: string
  readonly headId: string
  readonly pairId: string
  readonly position: number
  readonly source: string
  readonly used: boolean
  readonly cameAssembled: boolean
  readonly overheated: boolean
  readonly side: string
  readonly cameWith: string
  readonly ownedBy: string
  readonly rackPlace: string
  readonly presentCc: Kept
  readonly targetCc: Kept
  readonly comebackOfId: string | null
  readonly comebackCause: string
  readonly comebackPays: string
}

export async function addVisit(ctx: Write, visit: NewVisit): Promise<string> {
  const { presentCc, targetCc, ...rest } = visit
  const id = newId(ctx.now)
  await ctx.tx.visit.create({
    data: {
      ...rest,
      id,
      presentCc: presentCc?.value ?? null,
      presentText: presentCc?.text ?? '',
      presentUnit: presentCc?.unit ?? '',
      targetCc: targetCc?.value ?? null,
      targetText: targetCc?.text ?? '',
      targetUnit: targetCc?.unit ?? '',
      rulesVersion: ctx.settingsVersion,
      createdAt: ctx.now,
    },
  })
  return id
}

export async function addOrderedLines(
  ctx: Write,
  visitId: string,
  lines: readonly { work: string; note: string }[],
): Promise<void> {
  await ctx.tx.orderedLine.createMany({
    data: lines.map(({ work, note }) => ({ id: newId(ctx.now), visitId, work, note, createdAt: ctx.now })),
  })
}

export async function endOrderedLines(ctx: Write, lineIds: readonly string[]): Promise<void> {
  await ctx.tx.orderedLine.updateMany({ where: { id: { in: [...lineIds] } }, data: { endedAt: ctx.now } })
}
