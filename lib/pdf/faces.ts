import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fontkit from '@pdf-lib/fontkit'
import { readTrueType, type TrueType } from './true-type'

export type Face = 'text' | 'text-bold' | 'figure' | 'figure-bold'

/** The faces that papers are written in, and Noto Sans for letters that those lack. */
export type FontName = Face | 'other' | 'other-bold'

/** TTF, not WOFF2: the font library stops the process on WOFF2. */
const files: Readonly<Record<FontName, readonly [folder: string, name: string]>> = {
  text: ['barlow/400Regular', 'Barlow_400Regular'],
  'text-bold': ['barlow/600SemiBold', 'Barlow_600SemiBold'],
  figure: ['barlow-condensed/500Medium', 'BarlowCondensed_500Medium'],
  'figure-bold': ['barlow-condensed/600SemiBold', 'BarlowCondensed_600SemiBold'],
  other: ['noto-sans/400Regular', 'NotoSans_400Regular'],
  'other-bold': ['noto-sans/600SemiBold', 'NotoSans_600SemiBold'],
}

/** How a font sets one letter. */
export type Glyph = {
  readonly letter: string
  /** The glyph's number in the font file. */
  readonly id: number
  /** At a size of 1, in the unit of the size. */
  readonly width: number
}

type Parsed = ReturnType<typeof fontkit.create>
type Measures = ReturnType<typeof measuresOf>
type Loaded = {
  readonly parsed: Parsed
  readonly trueType: TrueType
  /** What a file of PDF says of a font, in thousandths of its size. */
  readonly measures: Measures
  /** Letters met before; null: the font has no such letter. */
  readonly glyphs: Map<string, Glyph | null>
}

const loaded = new Map<FontName, Loaded>()

/** Read and parsed once a process. The path is put together at run time so that no bundler tries to follow it. */
export function loadFont(name: FontName): Loaded {
  const known = loaded.get(name)
  if (known) return known
  const [folder, file] = files[name]
  const bytes = new Uint8Array(
    readFileSync(join(process.cwd(), 'node_modules', '@expo-google-fonts', folder, `${file}.ttf`)),
  )
  const parsed = fontkit.create(bytes)
  const font = {
    parsed,
    trueType: readTrueType(bytes),
    measures: measuresOf(parsed),
    glyphs: new Map<string, Glyph | null>(),
  }
  loaded.set(name, font)
  return font
}

/** It has letters of its own numbering. */
const symbolic = 4

function measuresOf({ ascent, descent, capHeight, xHeight, italicAngle, bbox, unitsPerEm }: Parsed) {
  const share = (units: number) => (units * 1000) / unitsPerEm
  return {
    Flags: symbolic,
    FontBBox: [bbox.minX, bbox.minY, bbox.maxX, bbox.maxY].map(share),
    ItalicAngle: italicAngle,
    Ascent: share(ascent),
    Descent: share(descent),
    CapHeight: share(capHeight || ascent),
    XHeight: share(xHeight),
    // The font does not say how thick its stems are.
    StemV: 0,
  }
}

/** How a font sets a letter; null: it has no such letter. */
export function glyphIn(name: FontName, letter: string): Glyph | null {
  const { parsed, glyphs } = loadFont(name)
  const known = glyphs.get(letter)
  if (known !== undefined) return known
  const made = makeGlyph(parsed, letter)
  glyphs.set(letter, made)
  return made
}

/**
 * Figures all have one width, which the font library knows from the font's own rules. Other letters are taken as they
 * are, one by one, so that words can be searched and copied; the library's rules for Indic ones stop with an error.
 */
function makeGlyph(parsed: Parsed, letter: string): Glyph | null {
  const code = letter.codePointAt(0) ?? 0
  if (!parsed.hasGlyphForCodePoint(code)) return null
  const plain = parsed.glyphForCodePoint(code)
  const { id, advanceWidth } = /[0-9]/.test(letter) ? (parsed.layout(letter, { tnum: true }).glyphs[0] ?? plain) : plain
  return { letter, id, width: advanceWidth / parsed.unitsPerEm }
}
