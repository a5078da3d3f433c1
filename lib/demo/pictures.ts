import sharp from 'sharp'

/** Pictures of the demo: drawn here, line by line, so that nobody takes them for a photo of a head that exists. */

type Stroke = readonly (readonly [number, number])[]

/** Letters as a scribe scratches them, on a grid four wide and six high: no typeface has to be there. */
const strokes: Readonly<Record<string, readonly Stroke[]>> = {
  '0': [
    [
      [0, 0],
      [4, 0],
      [4, 6],
      [0, 6],
      [0, 0],
    ],
  ],
  '1': [
    [
      [1, 1],
      [2, 0],
      [2, 6],
    ],
  ],
  '2': [
    [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
      [0, 6],
      [4, 6],
    ],
  ],
  '3': [
    [
      [0, 0],
      [4, 0],
      [4, 6],
      [0, 6],
    ],
    [
      [1, 3],
      [4, 3],
    ],
  ],
  '4': [
    [
      [0, 0],
      [0, 3],
      [4, 3],
    ],
    [
      [3, 1],
      [3, 6],
    ],
  ],
  '5': [
    [
      [4, 0],
      [0, 0],
      [0, 3],
      [4, 3],
      [4, 6],
      [0, 6],
    ],
  ],
  '6': [
    [
      [4, 0],
      [0, 0],
      [0, 6],
      [4, 6],
      [4, 3],
      [0, 3],
    ],
  ],
  '7': [
    [
      [0, 0],
      [4, 0],
      [1, 6],
    ],
  ],
  '8': [
    [
      [0, 0],
      [4, 0],
      [4, 6],
      [0, 6],
      [0, 0],
    ],
    [
      [0, 3],
      [4, 3],
    ],
  ],
  '9': [
    [
      [4, 3],
      [0, 3],
      [0, 0],
      [4, 0],
      [4, 6],
      [0, 6],
    ],
  ],
  '-': [
    [
      [1, 3],
      [3, 3],
    ],
  ],
  T: [
    [
      [0, 0],
      [4, 0],
    ],
    [
      [2, 0],
      [2, 6],
    ],
  ],
  E: [
    [
      [4, 0],
      [0, 0],
      [0, 6],
      [4, 6],
    ],
    [
      [0, 3],
      [3, 3],
    ],
  ],
  X: [
    [
      [0, 0],
      [4, 6],
    ],
    [
      [4, 0],
      [0, 6],
    ],
  ],
}

function scratched(text: string, x: number, y: number, size: number): string {
  return [...text]
    .flatMap((letter, at) =>
      (strokes[letter] ?? []).map((stroke) =>
        stroke.map(([dx, dy]) => `${x + (at * 6 + dx) * size},${y + dy * size}`).join(' '),
      ),
    )
    .map((points) => `<polyline points="${points}"/>`)
    .join('')
}

export type Drawn = {
  readonly tag: string
  readonly chambers: number
  /** The chamber that something is the matter with, counted from the marked end. */
  readonly ringed?: number
  /** What a vendor scratched beside the deck. */
  readonly marks?: string
}

const wide = 800
const high = 600

/** The deck of a head from below, its tag wired to the marked end. */
function deck({ tag, chambers, ringed, marks = '' }: Drawn): string {
  const pitch = 640 / chambers
  const chamberAt = (n: number) => 80 + pitch * (n + 0.5)
  const radius = Math.min(pitch * 0.38, 90)
  const each = Array.from({ length: chambers }, (_, n) => {
    const x = chamberAt(n)
    return `<ellipse cx="${x}" cy="330" rx="${radius}" ry="${radius * 1.15}" fill="#8d959b"/>
      <circle cx="${x}" cy="${330 - radius * 0.45}" r="${radius * 0.42}" fill="#5b646b"/>
      <circle cx="${x}" cy="${330 + radius * 0.5}" r="${radius * 0.34}" fill="#5b646b"/>`
  })
  const bolts = Array.from({ length: chambers + 1 }, (_, n) => {
    const x = 80 + pitch * n
    return [205, 455].map((y) => `<circle cx="${x}" cy="${y}" r="13" fill="#3d464c"/>`).join('')
  })
  const ring =
    ringed === undefined
      ? ''
      : `<circle cx="${chamberAt(ringed - 1)}" cy="330" r="${radius * 1.35}" stroke="#9c0c17" stroke-width="8" stroke-dasharray="22 12"/>`
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}" height="${high}" fill="none">
    <rect width="${wide}" height="${high}" fill="#d8dde0"/>
    <rect x="40" y="165" width="720" height="330" rx="14" fill="#b4bcc1" stroke="#3d464c" stroke-width="5"/>
    ${each.join('')}${bolts.join('')}${ring}
    <path d="M 70 190 C 60 120, 90 110, 108 92" stroke="#7a5d26" stroke-width="4"/>
    <rect x="100" y="40" width="294" height="92" rx="10" fill="#c9a45c" stroke="#7a5d26" stroke-width="4"/>
    <g stroke="#171204" stroke-width="6">${scratched(tag, 128, 62, 7)}</g>
    <g stroke="#1a1f23" stroke-width="5">${scratched(marks, 560, 520, 8)}</g>
  </svg>`
}

/** The same as a camera would hand it over: a JPEG. */
export const drawPicture = (drawn: Drawn): Promise<Uint8Array> =>
  sharp(Buffer.from(deck(drawn)))
    .jpeg({ quality: 80 })
    .toBuffer()
