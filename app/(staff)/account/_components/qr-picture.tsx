import { encode } from 'uqr'

const quietModules = 4

/** A QR code to be scanned off the screen, dark on light in either theme. */
export function QrPicture({ words }: { words: string }) {
  const { data, size } = encode(words, { ecc: 'M', border: 0 })
  const whole = size + 2 * quietModules
  const dark = data.flatMap((row, y) =>
    row.flatMap((on, x) => (on ? [`M${x + quietModules} ${y + quietModules}h1v1h-1z`] : [])),
  )
  return (
    <svg
      role="img"
      aria-label="QR code of the key"
      width="220"
      height="220"
      viewBox={`0 0 ${whole} ${whole}`}
      shapeRendering="crispEdges"
    >
      <rect width={whole} height={whole} fill="#fff" />
      <path d={dark.join('')} fill="#000" />
    </svg>
  )
}
