import { PDFDocument } from 'pdf-lib'
import { drawWords, pointsPerMm, type Canvas } from './canvas'
import { drawMarks } from './draw-marks'
import { openFonts, wordsWidth } from './fonts'
import { clip, describe } from './layout'
import type { PrintSetting } from './print-setting'
import { qrDrawing } from './qr'
import type { TagLabelData } from './tag-label-data'

export type { TagLabelData } from './tag-label-data'

const widthMm = 62
const heightMm = 29
const qrMm = 27

/** Labels of 62 × 29 mm for a small label printer, a page each. */
export async function tagLabel(
  labels: readonly TagLabelData[],
  setting: Omit<PrintSetting, 'paper'>,
): Promise<Uint8Array> {
  const doc = await PDFDocument.create()
  const first = labels[0]
  describe(doc, {
    title: `Tag label ${labels.map((label) => label.tag).join(', ')}`,
    shopName: first?.shopName ?? '',
    language: first?.language ?? 'en',
    setting: { ...setting, paper: 'a4' },
  })
  const fonts = await openFonts(doc)
  for (const label of labels) {
    drawLabel({ page: doc.addPage([widthMm * pointsPerMm, heightMm * pointsPerMm]), fonts }, label)
  }
  await fonts.embed()
  return doc.save()
}

function drawLabel(canvas: Canvas, label: TagLabelData): void {
  drawMarks(canvas, qrDrawing(label.qrText, qrMm), 1, 1)
  const left = qrMm + 2
  const room = widthMm - left - 2
  const tagMm = Math.min(12, room / wordsWidth(label.tag || ' ', 'figure-bold'))
  drawWords(canvas, label.tag, left, 12, { face: 'figure-bold', sizeMm: tagMm })
  const lines = [label.jobNumber, label.casting, label.side, label.shopName].filter((line) => line !== '')
  lines.forEach((line, i) => {
    const style = { face: i === 0 ? 'text-bold' : 'text', sizeMm: 2.9 } as const
    drawWords(canvas, clip(line, style.face, style.sizeMm, room), left, 16.6 + i * 3.5, style)
  })
}
