import { PDFString, type PDFContext, type PDFRef } from 'pdf-lib'
import { loadFont, type FontName, type Glyph } from './faces'
import { packedStream } from './packed-stream'
import { subsetOf } from './true-type'

/** Glyphs of a font by their numbers. */
export type Glyphs = ReadonlyMap<number, Glyph>

/** Writes a font with these glyphs alone into a file (ISO 32000-1, 9.7): a code of the text is the number of a glyph. */
export function embedFace(context: PDFContext, name: FontName, glyphs: Glyphs): PDFRef {
  const font = loadFont(name)
  const baseFont = `${subsetTag(glyphs)}+${font.parsed.postscriptName}`
  const program = packedStream(context, subsetOf(font.trueType, glyphs.keys()))
  const descriptor = context.obj({
    Type: 'FontDescriptor',
    FontName: baseFont,
    ...font.measures,
    FontFile2: context.register(program),
  })
  const letters = context.obj({
    Type: 'Font',
    Subtype: 'CIDFontType2',
    CIDToGIDMap: 'Identity',
    BaseFont: baseFont,
    CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
    FontDescriptor: context.register(descriptor),
    W: [...glyphs.values()].flatMap(({ id, width }) => [id, [width * 1000]]),
  })
  return context.register(
    context.obj({
      Type: 'Font',
      Subtype: 'Type0',
      BaseFont: baseFont,
      Encoding: 'Identity-H',
      DescendantFonts: [context.register(letters)],
      ToUnicode: context.register(packedStream(context, Buffer.from(lettersByCode(glyphs), 'latin1'))),
    }),
  )
}

/** Six letters that tell one part of a font from another, since a printer may keep fonts by their names. */
function subsetTag(glyphs: Glyphs): string {
  const sum = [...glyphs.keys()].reduce((hash, id) => (hash * 31 + id) % 26 ** 6, 0)
  return Array.from({ length: 6 }, (_, i) => String.fromCharCode(65 + (Math.floor(sum / 26 ** i) % 26))).join('')
}

/** A table of letters may have so many in one part. */
const mostInPart = 100

/** Which letter each code is, so that the words of a paper can be searched and copied. */
function lettersByCode(glyphs: Glyphs): string {
  const lines = Array.from(glyphs.values(), ({ id, letter }) => `<${hex4(id)}> <${utf16Of(letter)}>`)
  const parts = Array.from({ length: Math.ceil(lines.length / mostInPart) }, (_, i) =>
    lines.slice(i * mostInPart, (i + 1) * mostInPart),
  )
  return [
    '/CIDInit /ProcSet findresource begin',
    '12 dict begin',
    'begincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def',
    '/CMapType 2 def',
    '1 begincodespacerange',
    '<0000> <ffff>',
    'endcodespacerange',
    ...parts.flatMap((part) => [`${part.length} beginbfchar`, ...part, 'endbfchar']),
    'endcmap',
    'CMapName currentdict /CMap defineresource pop',
    'end',
    'end',
  ].join('\n')
}

const hex4 = (value: number): string => value.toString(16).padStart(4, '0')

const utf16Of = (letter: string): string =>
  Array.from({ length: letter.length }, (_, i) => hex4(letter.charCodeAt(i))).join('')
