export type PackedRows = { readonly packed: Uint8Array; readonly widthPx: number; readonly heightPx: number }

const signatureBytes = 8
/** Length, kind and check of a part. */
const frameBytes = 12
/** Eight bits a colour, red, green and blue, packed and filtered in the one known manner, not interlaced. */
const plain = [8, 2, 0, 0, 0].join()

/** The packed rows of a PNG of eight bits and three colours, as a logo is kept. Another kind is a fault of the program. */
export function packedRows(bytes: Uint8Array): PackedRows {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const header = signatureBytes + 8
  if (bytes.subarray(header + 8, header + 13).join() !== plain) throw new Error('A logo of another kind of PNG')
  const parts: Uint8Array[] = []
  for (let at = signatureBytes; at < bytes.length;) {
    const length = view.getUint32(at)
    const kind = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    if (kind === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + length))
    at += frameBytes + length
  }
  return { packed: joined(parts), widthPx: view.getUint32(header), heightPx: view.getUint32(header + 4) }
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}
