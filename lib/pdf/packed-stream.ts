import { deflateSync } from 'node:zlib'
import type { PDFContext, PDFRawStream } from 'pdf-lib'

/**
 * A stream of a file, packed by zlib itself. The library does it in script, which took a fifth of a paper's time; the
 * stream format is the same (RFC 1950).
 */
export const packedStream = (context: PDFContext, bytes: Uint8Array): PDFRawStream =>
  context.stream(deflateSync(bytes), { Filter: 'FlateDecode' })
