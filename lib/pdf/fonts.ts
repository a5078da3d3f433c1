import { glyphIn, type Face, type FontName, type Glyph } from './faces'

export type { Face } from './faces'

/** A stretch of words that one font can set. */
export type Run = {
  readonly text: string
  readonly font: FontName
  /** The numbers of its glyphs, two bytes each, as a page has them. */
  readonly codes: string
  /** At a size of 1, in the unit of the size. */
  readonly width: number
}

export type Fonts = {
  /** Splits words into runs: Barlow where it has the letters, Noto Sans where it has not, a replacement mark where neither has. */
  readonly runs: (words: string, face: Face) => readonly Run[]
  /** Letters met so far that no face has. */
  readonly missing: () => readonly string[]
  /** The glyphs that were used of each font, by their numbers. */
  readonly used: () => ReadonlyMap<FontName, ReadonlyMap<number, Glyph>>
}

/** Stands for a letter that neither font has: Noto Sans has it, and who copies the words sees that one was lost. */
const missing = '\ufffd'

type Letter = {
  readonly font: FontName
  readonly glyph: Glyph
  /** What should have been shown, where no face has it. */
  readonly lost?: string
}

const otherOf = (face: Face): FontName => (face.endsWith('bold') ? 'other-bold' : 'other')

function choose(letter: string, fonts: readonly FontName[]): Letter | null {
  for (const font of fonts) {
    const glyph = glyphIn(font, letter)
    if (glyph !== null) return { font, glyph }
  }
  return null
}

const alphabetic = /\p{L}/u

/** Barlow, unless it lacks a letter of the word: a Greek word half in one face and half in another reads badly. */
function lettersOf(word: string, face: Face): Letter[] {
  const other = otherOf(face)
  const letters = Array.from(word)
  const foreign = letters.some((letter) => alphabetic.test(letter) && glyphIn(face, letter) === null)
  const fonts = foreign ? [other, face] : [face, other]
  return letters.map((letter) => choose(letter, fonts) ?? lostIn(other, letter))
}

function lostIn(font: FontName, letter: string): Letter {
  const glyph = glyphIn(font, missing)
  if (glyph === null) throw new Error(`The face ${font} has no mark for a letter that is lost`)
  return { font, glyph, lost: letter }
}

/** Composed letters; line breaks and tabs as blanks; without what has no shape of its own (joiners, direction marks). */
const printable = (words: string): string =>
  words
    .normalize('NFC')
    .replace(/\s/gu, ' ')
    .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Mn}](?<!\p{L}\p{Mn})/gu, '')

type SetWord = { readonly letters: readonly Letter[]; readonly runs: readonly Run[]; readonly width: number }

/** Words set before, a paper being mostly made of words that stood on the one before. Forgotten together when many. */
const setWords = new Map<string, SetWord>()
const mostSetWords = 20_000

function setWord(word: string, face: Face): SetWord {
  const key = `${face} ${word}`
  const known = setWords.get(key)
  if (known) return known
  const letters = lettersOf(printable(word), face)
  const runs = joined(letters.map(runOf))
  const made = { letters, runs, width: runs.reduce((sum, run) => sum + run.width, 0) }
  if (setWords.size >= mostSetWords) setWords.clear()
  setWords.set(key, made)
  return made
}

const runOf = ({ font, glyph: { letter, id, width } }: Letter): Run => ({
  text: letter,
  font,
  codes: id.toString(16).padStart(4, '0'),
  width,
})

/** Neighbours of one font as one. */
function joined(runs: readonly Run[]): Run[] {
  const made: Run[] = []
  for (const run of runs) {
    const last = made.at(-1)
    if (last?.font === run.font) {
      const [text, codes, width] = [last.text + run.text, last.codes + run.codes, last.width + run.width]
      made[made.length - 1] = { text, font: run.font, codes, width }
    } else made.push(run)
  }
  return made
}

const wordsOf = (words: string): string[] => words.split(/(?<=\s)/u)

/** Width of words at a size of 1, in the unit of the size. */
export const wordsWidth = (words: string, face: Face): number =>
  wordsOf(words).reduce((sum, word) => sum + setWord(word, face).width, 0)

/** The faces of a document, and what it used of them. */
export function openFonts(): Fonts {
  const met = new Set<SetWord>()
  const letters = () => [...met].flatMap((word) => word.letters)
  return {
    runs: (words, face) => {
      const set = wordsOf(words).map((word) => setWord(word, face))
      for (const word of set) met.add(word)
      return joined(set.flatMap(({ runs }) => runs))
    },
    missing: () => [...new Set(letters().flatMap(({ lost }) => (lost === undefined ? [] : [lost])))],
    used: () => {
      const used = new Map<FontName, Map<number, Glyph>>()
      for (const { font, glyph } of letters()) {
        const known = used.get(font) ?? new Map<number, Glyph>()
        used.set(font, known.set(glyph.id, glyph))
      }
      return used
    },
  }
}
