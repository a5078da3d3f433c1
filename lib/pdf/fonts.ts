import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fontkit from '@pdf-lib/fontkit'
import { CustomFontSubsetEmbedder, PDFFont, type PDFDocument } from 'pdf-lib'

export type Face = 'text' | 'text-bold' | 'figure' | 'figure-bold'

/** A stretch of words that one font can set. */
export type Run = { readonly text: string; readonly font: PDFFont }

export type Fonts = {
  /** Splits words into runs: Barlow where it has the letters, Noto Sans where it has not, a box where neither has. */
  readonly runs: (words: string, face: Face) => readonly Run[]
  /** Writes the fonts that were used into the file, as subsets; before it is saved. */
  readonly embed: () => Promise<void>
}

/** TTF, not WOFF2: the font library stops the process on WOFF2. */
const files: Readonly<Record<Face | 'other' | 'other-bold', readonly [folder: string, name: string]>> = {
  text: ['barlow/400Regular', 'Barlow_400Regular'],
  'text-bold': ['barlow/600SemiBold', 'Barlow_600SemiBold'],
  figure: ['barlow-condensed/500Medium', 'BarlowCondensed_500Medium'],
  'figure-bold': ['barlow-condensed/600SemiBold', 'BarlowCondensed_600SemiBold'],
  other: ['noto-sans/400Regular', 'NotoSans_400Regular'],
  'other-bold': ['noto-sans/600SemiBold', 'NotoSans_600SemiBold'],
}

type ParsedFont = ReturnType<typeof fontkit.create>
type Glyphs = ReturnType<ParsedFont['layout']>['glyphs']
type Loaded = { readonly bytes: Uint8Array; readonly parsed: ParsedFont }

const loaded = new Map<string, Loaded>()

/** Read and parsed once a process. The path is put together at run time so that no bundler tries to follow it. */
function load(name: keyof typeof files): Loaded {
  const known = loaded.get(name)
  if (known) return known
  const [folder, file] = files[name]
  const bytes = new Uint8Array(
    readFileSync(join(process.cwd(), 'node_modules', '@expo-google-fonts', folder, `${file}.ttf`)),
  )
  const font = { bytes, parsed: letterByLetter(fontkit.create(bytes)) }
  loaded.set(name, font)
  return font
}

/** Figures all of one width; no ligatures, so that the words can be searched and copied. */
const features = { tnum: true, liga: false, dlig: false, calt: false, kern: false }

/**
 * The same font, shaping each letter once and remembering it: pdf-lib sets glyphs one after the other without kerning, so
 * the neighbours do not matter, and shaping whole lines again and again would take most of the time of a paper.
 */
function letterByLetter(font: ParsedFont): ParsedFont {
  const shaped = new Map<string, Glyphs>()
  const shape = (letter: string): Glyphs => {
    const known = shaped.get(letter)
    if (known) return known
    const { glyphs } = font.layout(letter, features)
    shaped.set(letter, glyphs)
    return glyphs
  }
  const layout = (words: string) => ({ glyphs: Array.from(words).flatMap(shape) })
  return Object.assign(Object.create(font) as ParsedFont, { layout })
}

/** Hands pdf-lib the fonts that are parsed already. */
const parsedFontkit = {
  create(bytes: Uint8Array): ParsedFont {
    for (const font of loaded.values()) if (font.bytes === bytes) return font.parsed
    return fontkit.create(bytes)
  },
}

/** Neither font has a box, but both draw one for a letter they lack: this one is asked for, so that it also reads as one. */
const missing = '\u25a1'

type Letter = { readonly shown: string; readonly other: boolean; readonly width: number }

/** Letters met before, a face each: their widths do not depend on their neighbours, since papers are set without kerning. */
const letters: Readonly<Record<Face, Map<string, Letter>>> = {
  text: new Map(),
  'text-bold': new Map(),
  figure: new Map(),
  'figure-bold': new Map(),
}

const otherOf = (face: Face) => (face.endsWith('bold') ? 'other-bold' : 'other')

function letterIn(face: Face, letter: string): Letter {
  const known = letters[face].get(letter)
  if (known) return known
  const point = letter.codePointAt(0) ?? 0
  const own = load(face).parsed
  const other = !own.hasGlyphForCodePoint(point) && load(otherOf(face)).parsed.hasGlyphForCodePoint(point)
  const font = other ? load(otherOf(face)).parsed : own
  const shown = other || own.hasGlyphForCodePoint(point) ? letter : missing
  const glyphs = font.layout(shown, features).glyphs
  const width = glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / font.unitsPerEm
  const met = { shown, other, width }
  letters[face].set(letter, met)
  return met
}

/** Composed letters; line breaks and tabs as blanks; without what has no shape of its own (joiners, direction marks). */
const printable = (words: string): string =>
  words
    .normalize('NFC')
    .replace(/\s/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Mn}](?<!\p{L}\p{Mn})/gu, '')

/** Width of words at a size of 1, in the unit of the size. */
export function wordsWidth(words: string, face: Face): number {
  let sum = 0
  for (const letter of printable(words)) sum += letterIn(face, letter).width
  return sum
}

/**
 * The faces of a document. They are kept from the document's own list of fonts, since it would write out all of them,
 * and most papers use four of six.
 */
export async function openFonts(doc: PDFDocument): Promise<Fonts> {
  const fonts = new Map<string, PDFFont>()
  for (const name of Object.keys(files) as (keyof typeof files)[]) {
    const embedder = await CustomFontSubsetEmbedder.for(parsedFontkit, load(name).bytes, undefined, features)
    fonts.set(name, PDFFont.of(doc.context.nextRef(), doc, embedder))
  }
  const used = new Set<PDFFont>()
  return {
    runs: (words, face) => {
      const runs: { text: string; font: PDFFont }[] = []
      for (const letter of printable(words)) {
        const { shown, other } = letterIn(face, letter)
        const font = fonts.get(other ? otherOf(face) : face)
        if (!font) throw new Error(`The face ${face} was not opened`)
        used.add(font)
        const last = runs[runs.length - 1]
        if (last?.font === font) last.text += shown
        else runs.push({ text: shown, font })
      }
      return runs
    },
    embed: async () => {
      for (const font of used) await font.embed()
    },
  }
}
