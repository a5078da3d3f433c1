import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { beforeAll, describe, expect, it } from 'vitest'
import { Trends } from '@/app/(staff)/heads/[id]/_components/trends'
import { SpecPage } from '@/app/(customer)/s/[token]/_components/spec-page'
import type { Actor } from '@/lib/core/access/roles'
import type { SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { chamberBars } from '@/lib/drawing/chamber-bars'
import { flowCurves } from '@/lib/drawing/flow-curves'
import { headPlan } from '@/lib/drawing/head-plan'
import { headSection } from '@/lib/drawing/head-section'
import type { Drawing } from '@/lib/drawing/marks'
import { seeHead } from '@/lib/use-cases/heads/see-head'
import { makeCustomerLink } from '@/lib/use-cases/links/make-customer-link'
import { seeByLink, specByLink } from '@/lib/use-cases/links/see-by-link'
import { specSheet } from '@/lib/pdf/spec-sheet'
import type { TestDatabase } from '@/tests/setup/database'
import { demoMoment as now, filledDemo } from '@/tests/setup/demo-shop'
import { readPdf } from './read-pdf'

/** What a customer is shown of one head: what the page is made of, the page, and the paper, each in words. */
type Sheet = {
  readonly headId: string
  readonly spec: SpecSheetData
  readonly page: string
  readonly paper: string
}

let shop: TestDatabase
let owner: Actor
let sheets: readonly Sheet[] = []

beforeAll(async () => {
  shop = await filledDemo()
  const person = await shop.client.person.findFirstOrThrow({ where: { name: 'Orla Quennell' } })
  owner = { personId: person.id, name: person.name, roles: ['owner'], grants: ['release', 'waive'] }
  sheets = await allSheets()
}, 300_000)

/** By the customer's own way: a link to each job, what it shows, and the paper it opens. */
async function allSheets(): Promise<Sheet[]> {
  const jobs = await shop.client.job.findMany({ select: { id: true } })
  const found: Sheet[] = []
  for (const { id } of jobs) {
    const { path } = await makeCustomerLink(owner, { jobId: id }, { now })
    const token = path.slice('/s/'.length)
    const view = await seeByLink(token, now)
    for (const { spec, visitId } of view.heads) {
      if (!spec) continue
      const { headId } = await shop.client.visit.findUniqueOrThrow({ where: { id: visitId } })
      const { bytes } = await specByLink(token, visitId, now)
      const page = renderToStaticMarkup(createElement(SpecPage, { spec }))
      found.push({ headId, spec, page: wordsOf(page), paper: (await readPdf(bytes)).text })
    }
  }
  return found
}

const entities: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#x27;': "'",
}

/** What is read off a page, each element's words apart. */
const wordsOf = (html: string): string =>
  html.replace(/<[^>]*>/g, '\n').replace(/&[^;]+;/g, (entity) => entities[entity] ?? entity)

/** Everything with a figure in it, less what only sets it off; how often each stands there. */
function figures(words: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const word of words.split(/[\s·]+/)) {
    const figure = word.replace(/^[(“‘"]+|[),;:.”’"]+$/g, '')
    if (/\d/.test(figure)) counts.set(figure, (counts.get(figure) ?? 0) + 1)
  }
  return counts
}

/** Every text of the model, one after the other; numbers are there for pictures alone. */
function textsOf(value: unknown): string[] {
  if (typeof value === 'string') return [value]
  if (value === null || typeof value !== 'object') return []
  return Object.values(value).flatMap(textsOf)
}

/** What the model says to a reader: without the drawing, whose figures its own marks show. */
/** Without what is drawn: the head and, told by the hash of its file, the logo. */
const modelTexts = ({
  drawing: _,
  language: _language,
  shop: { logo: _logo, ...shop },
  ...spec
}: SpecSheetData): string[] => textsOf({ ...spec, shop })

/** Figures of the scales, the tolerance and the foot of a page, which stand in pictures and at the edge of a paper. */
function pictured(spec: SpecSheetData): string[] {
  const drawings: Drawing[] = [
    headPlan(spec.drawing),
    headSection(spec.drawing),
    ...(spec.chambers ? [chamberBars(spec.chambers, { widthMm: 116, heightMm: 40 })] : []),
    ...spec.flow.flatMap((run) =>
      [43, 60].map((heightMm) =>
        flowCurves(run.beforePoints, run.afterPoints, { title: run.title, widthMm: 90, heightMm }),
      ),
    ),
  ]
  return drawings.flatMap(({ description, marks }) => [
    description,
    ...marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
  ])
}

/** Pieces of text as they follow each other, a stroke between. */
const inLine = (words: string): string => words.replace(/\s*\n\s*/g, '|').replace(/\|+/g, '|')

const missing = (wanted: ReadonlyMap<string, number>, there: ReadonlyMap<string, number>): string[] =>
  [...wanted].flatMap(([figure, count]) => {
    const found = there.get(figure) ?? 0
    return found < count ? [`${figure}: ${found} of ${count}`] : []
  })

const foreign = (there: ReadonlyMap<string, number>, known: ReadonlyMap<string, number>): string[] =>
  [...there.keys()].filter((figure) => !known.has(figure))

/** What stands on the paper alone: which page it is. When it was printed is when it was released. */
const foot = (paper: string): string => paper.match(/page \d+ of \d+/g)?.join(' ') ?? ''

describe('the figures of every demo head that has a sheet', () => {
  it('are those of all that were released or went back, and of every kind', () => {
    expect(sheets.length).toBeGreaterThanOrEqual(4)
    expect(sheets.some(({ spec }) => spec.flow.some(({ means }) => means.length > 0))).toBe(true)
    expect(sheets.some(({ spec }) => spec.cuts.length > 1)).toBe(true)
    expect(sheets.some(({ spec }) => spec.outcome === 'returned as is')).toBe(true)
  })

  it('fit two pages, on either size of paper', async () => {
    for (const { spec } of sheets) {
      for (const paper of ['letter', 'a4'] as const) {
        const { pages } = await readPdf(await specSheet(spec, { paper, printedAt: 'Mar 8, 2026, 2:30 PM', now }))
        expect([spec.tag, paper, pages.length <= 2]).toEqual([spec.tag, paper, true])
      }
    }
  })

  it('all stand on the customer’s page, as often as the model has them', () => {
    for (const { spec, page } of sheets) {
      // The page has the shop and the tag over all heads, and the flow's titles with each part of theirs.
      const { shop: _shop, tag: _tag, jobNumber: _job, shape: _shape, revision: _revision, ...rest } = spec
      const { drawing: _drawing, language: _language, ...shown } = rest
      expect([spec.tag, missing(figures(textsOf(shown).join('\n')), figures(page))]).toEqual([spec.tag, []])
    }
  })

  it('all stand on the paper, as often as the model has them, but what it says once for before and after', () => {
    for (const { spec, paper } of sheets) {
      const flow = spec.flow.map((run) =>
        run.beforeConditions === run.afterConditions ? { ...run, afterConditions: '' } : run,
      )
      // A remark that is true of several lifts stands once, with the lifts.
      const once = flow.map((run) => ({
        ...run,
        rows: run.rows.map((row) => ({ ...row, note: '' })),
        means: run.means.map((row) => ({ ...row, note: row.note.split('; ')[0] ?? '' })),
      }))
      expect([spec.tag, missing(figures(modelTexts({ ...spec, flow: once }).join('\n')), figures(paper))]).toEqual([
        spec.tag,
        [],
      ])
    }
  })

  it('are the only ones: neither the page nor the paper has a figure that the model has not', () => {
    for (const { spec, page, paper } of sheets) {
      const known = [...modelTexts(spec), ...pictured(spec)].join('\n')
      expect([spec.tag, foreign(figures(page), figures(known))]).toEqual([spec.tag, []])
      expect([spec.tag, foreign(figures(paper), figures(`${known}\n${foot(paper)}`))]).toEqual([spec.tag, []])
    }
  })

  it('stand row by row beside each other: lift with its flows, chamber with its volumes', async () => {
    for (const { spec, page, paper } of sheets) {
      const [onPage, onPaper] = [inLine(page), inLine(paper)]
      const rows = spec.flow.flatMap((run) =>
        [...run.rows, ...run.means].map(({ lift, before, after, diffCfm, diffPercent }) => [
          lift,
          before,
          after,
          diffCfm,
          diffPercent,
        ]),
      )
      const chambers = (spec.chambers?.rows ?? []).map(({ chamber, beforeCc, afterCc }) => [chamber, beforeCc, afterCc])
      for (const row of [...rows, ...chambers]) {
        const line = `|${row.map((cell) => cell ?? '–').join('|')}|`
        expect(onPage).toContain(line)
        expect(onPaper).toContain(line)
      }
    }
  })

  it('are on the head’s own page as they are on its sheet: chambers as came and finished, and what is gone', async () => {
    let compared = 0
    for (const { headId, spec } of sheets) {
      const head = await seeHead(owner, headId)
      const trends = inLine(wordsOf(renderToStaticMarkup(createElement(Trends, { head }))))
      const stage = (label: string) =>
        head.chamberTrend.find((one) => one.jobNumber === spec.jobNumber && one.label === label)
      for (const [label, side] of [
        ['as came', 'beforeCc'],
        ['finished', 'afterCc'],
      ] as const) {
        const texts = spec.chambers?.rows.map((row) => row[side]) ?? []
        if (!texts.some((text) => text !== null)) continue
        expect([spec.tag, label, stage(label)?.texts]).toEqual([spec.tag, label, texts])
        expect(trends).toContain(`|${label}|${spec.jobNumber}|${texts.map((text) => text ?? '–').join('|')}|`)
        compared++
      }
    }
    expect(compared).toBeGreaterThanOrEqual(4)
  })
})

describe('what the comparison would find', () => {
  const changed = ({ spec }: Sheet, from: string, to: string): SpecSheetData =>
    JSON.parse(JSON.stringify(spec).replaceAll(`"${from}"`, `"${to}"`)) as SpecSheetData
  const sheetWith = () => sheets.find(({ spec }) => spec.chambers?.meanAfterCc) ?? expect.unreachable()

  it('a figure that is another on the page, and one that is another on the paper', async () => {
    const sheet = sheetWith()
    const figure = sheet.spec.chambers?.rows[1]?.afterCc ?? expect.unreachable()
    const other = changed(sheet, figure, '99.9')
    const page = wordsOf(renderToStaticMarkup(createElement(SpecPage, { spec: other })))
    const setting = { paper: 'letter', printedAt: '', now } as const
    const paper = (await readPdf(await specSheet(other, setting))).text
    const model = figures(modelTexts(sheet.spec).join('\n'))
    expect(missing(figures(figure), figures(page)).length + foreign(figures(page), model).length).toBeGreaterThan(0)
    for (const words of [page, paper]) {
      const known = figures([...modelTexts(sheet.spec), ...pictured(sheet.spec)].join('\n'))
      expect(foreign(figures(words), known)).toContain('99.9')
      expect(missing(model, figures(words)).some((line) => line.startsWith(`${figure}:`))).toBe(true)
    }
  })
})
