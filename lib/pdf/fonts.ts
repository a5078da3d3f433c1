import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fontkit from '@pdf-lib/fontkit'
import { CustomFontSubsetEmbedder, PDFFont, type PDFDocument } from 'pdf-lib'

export type Face = 'text' | 'text-bold' | 'figure' | 'figure-bold'

/** A stretch of words that one font can set. */
export type Run = {
  readonly text: string
  readonly font: PDFFont
  /** At a size of 1, in the unit of the size. */
  readonly width: number
}

export type Fonts = {
  /** Splits words into runs: Barlow where it has the letters, Noto Sans where it has not, a replacement mark where neither has. */
  readonly runs: (words: string, face: Face) => readonly Run[]
  /** Letters met so far that no face has. */
  readonly missing: () => readonly string[]
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

type FontName = keyof typeof files
type ParsedFont = ReturnType<typeof fontkit.create>
type Glyphs = ReturnType<ParsedFont['layout']>['glyphs']
type ParsedSubset = ReturnType<ParsedFont['createSubset']>
type Loaded = { readonly bytes: Uint8Array; readonly parsed: ParsedFont }

const loaded = new Map<FontName, Loaded>()

/** Read and parsed once a process. The path is put together at run time so that no bundler tries to follow it. */
function load(name: FontName): Loaded {
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
    nameGlyph(letter, glyphs)
    shaped.set(letter, glyphs)
    return glyphs
  }
  const layout = (words: string) => {
    const glyphs: Glyphs = []
    for (const letter of words) glyphs.push(...shape(letter))
    return { glyphs }
  }
  const createSubset = () => wholePlaces(font.createSubset())
  return Object.assign(Object.create(font) as ParsedFont, { layout, createSubset })
}

/**
 * The library keeps a glyph as it met it first. Met as a part of another one, the + of a ±, it says no letter, and where
 * it stands alone on a later paper nobody could search or copy it.
 */
function nameGlyph(letter: string, [glyph, ...others]: Glyphs): void {
  if (glyph && others.length === 0 && glyph.codePoints.length === 0) glyph.codePoints = [letter.codePointAt(0) ?? 0]
}

/** What the font library's subset of a TrueType font is inside. */
type TrueTypeSubset = ParsedSubset & {
  _addGlyph: (id: number) => number
  readonly loca: { version?: number }
}

const isTrueType = (subset: ParsedSubset): subset is TrueTypeSubset => '_addGlyph' in subset

/**
 * Has the places of glyphs written in full. The library halves them in a small subset, which loses the last bit: after
 * one glyph of odd length (Noto Sans has them) the others are read from the wrong place and print as nothing.
 */
function wholePlaces(subset: ParsedSubset): ParsedSubset {
  if (!isTrueType(subset)) return subset
  const add = subset._addGlyph.bind(subset)
  subset._addGlyph = (id) => {
    subset.loca.version = 1
    return add(id)
  }
  return subset
}

/** Hands pdf-lib the fonts that are parsed already. */
const parsedFontkit = {
  create(bytes: Uint8Array): ParsedFont {
    for (const font of loaded.values()) if (font.bytes === bytes) return font.parsed
    return fontkit.create(bytes)
  },
}

/** Stands for a letter that neither font has: Noto Sans has it, and who copies the words sees that one was lost. */
const missing = '\ufffd'

type Letter = {
  readonly shown: string
  readonly font: FontName
  readonly width: number
  /** What should have been shown, where no face has it. */
  readonly lost?: string
}

const otherOf = (face: Face): FontName => (face.endsWith('bold') ? 'other-bold' : 'other')

/** Widths of letters met before, a font each; null: the font has no such letter. */
const widths = new Map<FontName, Map<string, number | null>>()

function widthIn(font: FontName, letter: string): number | null {
  const known = widths.get(font) ?? new Map<string, number | null>()
  widths.set(font, known)
  const met = known.get(letter)
  if (met !== undefined) return met
  const { parsed } = load(font)
  const width = parsed.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)
    ? parsed.layout(letter).glyphs.reduce((sum, glyph) => sum + glyph.advanceWidth, 0) / parsed.unitsPerEm
    : null
  known.set(letter, width)
  return width
}

function choose(letter: string, fonts: readonly FontName[]): Letter | null {
  for (const font of fonts) {
    const width = widthIn(font, letter)
    if (width !== null) return { shown: letter, font, width }
  }
  return null
}

const alphabetic = /\p{L}/u

/** Barlow, unless it lacks a letter of the word: a Greek word half in one face and half in another reads badly. */
function lettersOf(word: string, face: Face): Letter[] {
  const other = otherOf(face)
  const letters = Array.from(word)
  const foreign = letters.some((letter) => alphabetic.test(letter) && widthIn(face, letter) === null)
  const fonts = foreign ? [other, face] : [face, other]
  return letters.map(
    (letter) =>
      choose(letter, fonts) ?? {
        shown: missing,
        font: other,
        width: widthIn(other, missing) ?? 0.5,
        lost: letter,
      },
  )
}

/** Composed letters; line breaks and tabs as blanks; without what has no shape of its own (joiners, direction marks). */
const printable = (words: string): string =>
  words
    .normalize('NFC')
    .replace(/\s/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Mn}](?<!\p{L}\p{Mn})/gu, '')

type SetWord = { readonly letters: readonly Letter[]; readonly width: number }

/** Words set before, a paper being mostly made of words that stood on the one before. Forgotten together when many. */
const setWords = new Map<string, SetWord>()
const mostSetWords = 20_000

function setWord(word: string, face: Face): SetWord {
  const key = `${face} ${word}`
  const known = setWords.get(key)
  if (known) return known
  const letters = lettersOf(printable(word), face)
  const made = { letters, width: letters.reduce((sum, letter) => sum + letter.width, 0) }
  if (setWords.size >= mostSetWords) setWords.clear()
  setWords.set(key, made)
  return made
}

const wordsOf = (words: string): string[] => words.split(/(?<=\s)/u)

/** Width of words at a size of 1, in the unit of the size. */
export const wordsWidth = (words: string, face: Face): number =>
  wordsOf(words).reduce((sum, word) => sum + setWord(word, face).width, 0)

/**
 * The faces of a document. They are kept from the document's own list of fonts, since it would write out all of them,
 * and most papers use four of six.
 */
export async function openFonts(doc: PDFDocument): Promise<Fonts> {
  const fonts = new Map<FontName, PDFFont>()
  for (const name of Object.keys(files) as FontName[]) {
    const embedder = await CustomFontSubsetEmbedder.for(parsedFontkit, load(name).bytes, undefined, features)
    fonts.set(name, PDFFont.of(doc.context.nextRef(), doc, embedder))
  }
  const used = new Set<PDFFont>()
  const lostLetters = new Set<string>()
  return {
    runs: (words, face) => {
      const runs: { text: string; font: PDFFont; width: number }[] = []
      for (const word of wordsOf(words)) {
        for (const { shown, font: name, width, lost } of setWord(word, face).letters) {
          if (lost !== undefined) lostLetters.add(lost)
          const font = fonts.get(name)
          if (!font) throw new Error(`The face ${name} was not opened`)
          used.add(font)
          const last = runs[runs.length - 1]
          if (last?.font === font) {
            last.text += shown
            last.width += width
          } else runs.push({ text: shown, font, width })
        }
      }
      return runs
    },
    missing: () => [...lostLetters],
    embed: async () => {
      await Promise.all(Array.from(used, (font) => font.embed()))
    },
  }
}
