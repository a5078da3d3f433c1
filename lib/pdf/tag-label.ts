import { labelColumns, labelRows, labelsOnSheet } from '@/lib/core/shop/label-grid'
import { outlined, rectPath } from '@/lib/drawing/marks'
import { drawWords, type Canvas } from './canvas'
import { drawMarks } from './draw-marks'
import { wordsWidth } from './fonts'
import { clip, pageSizeMm } from './layout'
import { addPage, closeFile, openFile, type PaperFile } from './paper-file'
import type { PrintSetting } from './print-setting'
import { qrDrawing } from './qr'
import type { TagLabelData } from './tag-label-data'

export type { TagLabelData } from './tag-label-data'

const widthMm = 62
const heightMm = 29
const qrMm = 27

/** Labels of 62 × 29 mm for a small label printer, a page each. */
export async function tagLabel(labels: readonly TagLabelData[], setting: PrintSetting): Promise<Uint8Array> {
  const file = startLabels(labels, setting)
  for (const label of labels) drawLabel(addPage(file, widthMm, heightMm), label, 0, 0)
  return closeFile(file)
}

/**
 * The same labels on sheets of paper, three abreast, with lines to cut along. `first`: the place on the first sheet that
 * is still free, 1 to 27, row by row from the top left.
 */
export async function tagSheet(
  labels: readonly TagLabelData[],
  first: number,
  setting: PrintSetting,
): Promise<Uint8Array> {
  const file = startLabels(labels, setting)
  const [pageMm, pageHighMm] = pageSizeMm(setting.paper)
  const [left, top] = [(pageMm - labelColumns * widthMm) / 2, (pageHighMm - labelRows * heightMm) / 2]
  let canvas = addPage(file, pageMm, pageHighMm)
  labels.forEach((label, i) => {
    const place = (first - 1 + i) % labelsOnSheet
    if (place === 0 && i > 0) canvas = addPage(file, pageMm, pageHighMm)
    const [x, y] = [left + (place % labelColumns) * widthMm, top + Math.floor(place / labelColumns) * heightMm]
    drawMarks(canvas, cutLines, x, y)
    drawLabel(canvas, label, x, y)
  })
  return closeFile(file)
}

const cutLines = {
  widthMm,
  heightMm,
  title: 'Label',
  description: 'Lines to cut along.',
  marks: outlined(rectPath(0, 0, widthMm, heightMm), 'faint', 0.1),
}

function startLabels(labels: readonly TagLabelData[], setting: PrintSetting): PaperFile {
  const [label] = labels
  return openFile({
    title: titleOf(labels.map(({ tag }) => tag)),
    shopName: label?.shopName ?? '',
    language: label?.language ?? 'en',
    setting,
  })
}

/** A hundred tags make no title: the first few name the paper. */
function titleOf(tags: readonly string[]): string {
  const more = tags.length - 4
  if (more <= 0) return `Tag label ${tags.join(', ')}`
  return `Tag labels ${tags.slice(0, 4).join(', ')} and ${more} more`
}

function drawLabel(canvas: Canvas, label: TagLabelData, xMm: number, yMm: number): void {
  drawMarks(canvas, qrDrawing(label.qrText, qrMm), xMm + 1, yMm + 1)
  const left = qrMm + 2
  const room = widthMm - left - 2
  const tagMm = Math.min(12, room / wordsWidth(label.tag || ' ', 'figure-bold'))
  drawWords(canvas, label.tag, xMm + left, yMm + 12, { face: 'figure-bold', sizeMm: tagMm })
  const lines = [label.jobNumber, label.casting, label.side, label.shopName].filter((line) => line !== '')
  lines.forEach((line, i) => {
    const style = { face: i === 0 ? 'text-bold' : 'text', sizeMm: 2.9 } as const
    drawWords(canvas, clip(line, style.face, style.sizeMm, room), xMm + left, yMm + 16.6 + i * 3.4, style)
  })
}
