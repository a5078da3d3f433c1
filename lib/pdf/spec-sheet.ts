import type { SpecChambers, SpecFlow, SpecFlowRow, SpecSheetData } from '@/lib/core/spec/spec-sheet'
import { flowCurves } from '@/lib/drawing/flow-curves'
import {
  beside, drawing, finishPaper, gap, heading, list, newPage, need, paragraph, roomLeft, startPaper, within,
  type Paper,
} from './layout' // prettier-ignore
import {
  bigFigures, facts, headDrawings, listBlock, pairsBlock, tagHead, titledList, twoColumns,
  type Block,
} from './parts' // prettier-ignore
import type { PrintSetting } from './print-setting'
import { table } from './table'

/**
 * What the customer gets with the head. The first page is the one to pin up: figures, drawing, chambers, curves; the
 * second says how it was come by: cuts, valves and seats, flow lift by lift, waivers, what was declined, cautions.
 */
export async function specSheet(data: SpecSheetData, setting: PrintSetting): Promise<Uint8Array> {
  const paper = await startPaper({
    title: `Spec sheet ${data.tag}, job ${data.jobNumber}${data.revision > 1 ? `, revision ${data.revision}` : ''}`,
    shopName: data.shop.name,
    language: data.language,
    setting,
  })
  firstPage(paper, data)
  // Curves that found no room on the first page have begun the second.
  if (paper.doc.getPageCount() === 1) newPage(paper)
  else gap(paper, 4)
  secondPage(paper, data)
  return finishPaper(paper)
}

function firstPage(paper: Paper, data: SpecSheetData): void {
  shopLine(paper, data)
  tagHead(paper, {
    tag: data.tag,
    qrText: '',
    title: data.customer,
    lines: facts([
      ['Job', data.jobNumber],
      ['Engine', data.engine],
      ['Head', [data.casting, data.marks].filter((part) => part !== '').join(' · ')],
      ['Goes on', data.side ?? 'side not said'],
      ['Pair with', data.pairTags.join(', ')],
    ]),
  })
  gap(paper, 1)
  bigFigures(paper, data.headline)
  headDrawings(paper, data.drawing)
  askedAndDone(paper, data)
  if (data.chambers) chambers(paper, data.chambers)
  curves(paper, data.flow)
}

function shopLine(paper: Paper, data: SpecSheetData): void {
  const { left, right } = paper
  const middle = left + (right - left) * 0.55
  const outcome = data.outcome === 'released' ? 'Released' : 'Returned as is'
  beside(paper, [
    () =>
      within(paper, left, middle, (part) => {
        paragraph(part, data.shop.name, { face: 'figure-bold', sizeMm: data.shop.name.length > 30 ? 6 : 9 })
        paragraph(part, data.shop.lines.join(' · '), { sizeMm: 3.2 })
      }),
    () =>
      within(paper, middle + 4, right, (part) => {
        paragraph(part, data.revision > 1 ? `Spec sheet, revision ${data.revision}` : 'Spec sheet', {
          face: 'text-bold',
          sizeMm: 5,
        })
        paragraph(part, `${outcome} by ${data.releasedBy}, ${data.releasedAt}`)
        paragraph(part, data.revisionReason, { sizeMm: 3.2 })
      }),
  ])
  gap(paper, 4)
}

function askedAndDone(paper: Paper, { asked, done, notDone }: SpecSheetData): void {
  twoColumns(paper, [...listBlock('Asked', asked), ...listBlock('Done', done)])
  titledList(paper, 'Not done', notDone)
}

/** Said once when both were alike. */
const conditions = (before: string, after: string): readonly (readonly [string, string])[] =>
  before === after
    ? [['Before and after', before]]
    : [
        ['Before', before],
        ['After', after],
      ]

const orDash = (value: string | null): string => value ?? '–'

/** Chambers across, before and after down: how a machinist writes them on a bench. */
function chambers(paper: Paper, data: SpecChambers): void {
  heading(paper, 'Chambers, cc')
  const columns = [
    { label: 'from the marked end', share: 2 },
    ...data.rows.map(({ chamber }) => ({ label: chamber, share: 1, align: 'end' as const })),
    { label: 'mean', share: 1.2, align: 'end' as const },
    { label: 'spread', share: 1.2, align: 'end' as const },
  ]
  const line = (name: string, of: 'beforeCc' | 'afterCc', mean: string | null, spread: string | null) => [
    name,
    ...data.rows.map((row) => orDash(row[of])),
    orDash(mean),
    orDash(spread),
  ]
  const rows = [
    line('before', 'beforeCc', data.meanBeforeCc, data.spreadBeforeCc),
    line('after', 'afterCc', data.meanAfterCc, data.spreadAfterCc),
  ]
  table(paper, columns, rows, { boldRows: new Set([1]), sizeMm: data.rows.length > 8 ? 2.9 : 3.8 })
  gap(paper, 0.8)
  const remarks = data.rows.flatMap(({ chamber, remark }) =>
    remark === '' ? [] : [`Chamber ${chamber}: ${remark}`],
  )
  for (const words of [
    ...facts([['Target', data.target ?? ''], ...conditions(data.beforeWith, data.afterWith)]),
    ...remarks,
  ]) {
    paragraph(paper, words, { sizeMm: 3.2 })
  }
}

/** The curves take what room is left on the first page, within what can be read. */
const [leastCurveMm, mostCurveMm] = [34, 60]

/** Two curves beside each other, as many rows as there are pairs. */
function curves(paper: Paper, flow: readonly SpecFlow[]): void {
  const drawn = flow.filter((run) => run.beforePoints.length + run.afterPoints.length > 0)
  if (drawn.length === 0) return
  heading(paper, 'Flow', leastCurveMm + 6)
  const heightMm = Math.min(mostCurveMm, Math.max(leastCurveMm, roomLeft(paper) - 6))
  const { left, right } = paper
  const half = (right - left) / 2
  for (let i = 0; i < drawn.length; i += 2) {
    need(paper, heightMm + 6)
    beside(
      paper,
      drawn.slice(i, i + 2).map((run, c) => () => {
        within(paper, left + c * half, left + (c + 1) * half - 2, (part) => {
          paragraph(part, flowTitle(run), { face: 'text-bold' })
          const widthMm = part.right - part.left
          const picture = flowCurves(run.beforePoints, run.afterPoints, {
            title: run.title,
            widthMm,
            heightMm,
          })
          part.y += drawing(part, picture)
        })
      }),
    )
  }
}

const flowTitle = (run: SpecFlow): string =>
  run.notLike.length === 0 ? run.title : `${run.title} – not like for like`

function secondPage(paper: Paper, data: SpecSheetData): void {
  paragraph(paper, `${data.tag} · job ${data.jobNumber} · ${data.customer}`, {
    face: 'text-bold',
    sizeMm: 4.2,
  })
  cuts(paper, data)
  const waived = data.waivers.map(({ what, reason, by, at }) => `${what}: ${reason} (${by}, ${at})`)
  const declined = data.declined.map(({ what, how }) => (how === '' ? what : `${what} – ${how}`))
  twoColumns(paper, [
    ...compression(data),
    ...data.groups.flatMap(({ title, lines }) =>
      pairsBlock(
        title,
        lines.map(({ label, value }) => [label, value]),
      ),
    ),
    ...listBlock('Waived', waived),
    ...listBlock('Declined', declined),
    ...listBlock('Cautions', data.cautions),
    ...listBlock('Notes', data.notes),
  ])
  for (const run of data.flow) flowTable(paper, run)
}

function cuts(paper: Paper, { cuts: made, removedSinceNew, cutterMarks }: SpecSheetData): void {
  heading(paper, 'Cuts')
  if (made.length === 0) paragraph(paper, 'No metal was taken off the deck.')
  else {
    table(
      paper,
      [
        { label: 'cut', share: 2.4 },
        { label: 'planned', share: 2 },
        { label: 'as measured', share: 2, face: 'text-bold' },
        { label: 'measured how', share: 2 },
        { label: 'where', share: 1.6 },
      ],
      made.map((cut) => [cut.what, orDash(cut.planned), cut.measured ?? 'not measured', cut.how, cut.by]),
    )
  }
  gap(paper, 0.8)
  paragraph(paper, `Removed since new: ${removedSinceNew}`)
  paragraph(paper, cutterMarks)
}

function compression({ compression: ratio }: SpecSheetData): Block[] {
  if (ratio === null) return []
  const lines: readonly (readonly [string, string])[] = [
    ['Before', ratio.before ?? ''],
    ['After', ratio.after ?? ''],
    ['Not computed', ratio.needs],
  ]
  return pairsBlock(
    'Compression ratio',
    lines.filter(([, value]) => value !== ''),
  )
}

function flowTable(paper: Paper, run: SpecFlow): void {
  heading(paper, flowTitle(run))
  for (const words of facts(conditions(run.beforeConditions, run.afterConditions))) {
    paragraph(paper, words, { sizeMm: 3.2 })
  }
  list(paper, run.notLike, { sizeMm: 3.2, face: 'text-bold' })
  const cells = (row: SpecFlowRow) => [
    row.lift,
    orDash(row.before),
    orDash(row.after),
    orDash(row.diffCfm),
    orDash(row.diffPercent),
    row.note,
  ]
  const rows = [...run.rows, ...run.means].map(cells)
  if (rows.length === 0) return
  table(
    paper,
    [
      { label: 'lift', share: 2.2 },
      { label: 'before, cfm', share: 1.2, align: 'end' },
      { label: 'after, cfm', share: 1.2, align: 'end' },
      { label: 'difference, cfm', share: 1.4, align: 'end' },
      { label: '%', share: 1, align: 'end' },
      { label: '', share: 3 },
    ],
    rows,
    { sizeMm: 3, boldRows: new Set(run.means.map((_, i) => run.rows.length + i)) },
  )
}
