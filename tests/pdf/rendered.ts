import { execFile } from 'node:child_process'
import { mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import jsQR from 'jsqr'

const run = promisify(execFile)

/** A page in grey, as a black-and-white printer gets it: 0 is black, 255 is paper. */
export type Grey = { readonly width: number; readonly height: number; readonly pixels: Uint8Array }

async function withFile<T>(bytes: Uint8Array, use: (file: string, folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'brasstag-paper-'))
  try {
    const file = join(folder, 'paper.pdf')
    await writeFile(file, bytes)
    return await use(file, folder)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** What an independent checker of the file's structure says; it fails on damage and on warnings alike. */
export const structureOf = (bytes: Uint8Array): Promise<string> =>
  withFile(bytes, async (file) => {
    try {
      return (await run('qpdf', ['--check', file])).stdout
    } catch (error) {
      return String(error)
    }
  })

/** Every page, or a crop of it in millimetres, drawn by an independent program. */
export const greyPages = (
  bytes: Uint8Array,
  dpi: number,
  cropMm?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
): Promise<Grey[]> =>
  withFile(bytes, async (file, folder) => {
    const px = (mm: number) => String(Math.round((mm / 25.4) * dpi))
    const crop = cropMm ? ['-x', px(cropMm.x), '-y', px(cropMm.y), '-W', px(cropMm.width), '-H', px(cropMm.height)] : []
    await run('pdftoppm', ['-gray', '-r', String(dpi), ...crop, file, join(folder, 'page')])
    const names = (await readdir(folder)).filter((name) => name.endsWith('.pgm')).sort()
    return Promise.all(names.map(async (name) => parsePgm(await readFile(join(folder, name)))))
  })

function parsePgm(file: Buffer): Grey {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(file.subarray(0, 40).toString('latin1'))
  if (!head) throw new Error('not a grey picture')
  return { width: Number(head[1]), height: Number(head[2]), pixels: file.subarray(head[0].length) }
}

/** Least distance of anything printed from the edge of the page, in millimetres. */
export function clearEdgeMm({ width, height, pixels }: Grey, dpi: number): number {
  let least = Infinity
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if ((pixels[y * width + x] ?? 255) > 245) continue
      least = Math.min(least, x, y, width - 1 - x, height - 1 - y)
    }
  }
  return (least / dpi) * 25.4
}

/** The darkest and the commonest grey. */
export function tonesOf({ pixels }: Grey): { readonly darkest: number; readonly commonest: number } {
  const counts = new Uint32Array(256)
  for (const pixel of pixels) counts[pixel] = (counts[pixel] ?? 0) + 1
  return { darkest: counts.findIndex((count) => count > 0), commonest: counts.indexOf(Math.max(...counts)) }
}

/** What the code in the picture says; null: none can be read. */
export function decoded({ width, height, pixels }: Grey): string | null {
  const colours = Uint32Array.from(pixels, (grey) => grey * 0x010101)
  return jsQR(new Uint8ClampedArray(colours.buffer), width, height)?.data ?? null
}
