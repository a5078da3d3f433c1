import { wordsWidth, type Face } from './fonts'

/** Breaks words into lines no wider than asked; a word that is wider alone is broken between letters. */
export function wrap(words: string, face: Face, sizeMm: number, widthMm: number): string[] {
  const room = widthMm / sizeMm
  return words.split(/\r\n|\r|\n/).flatMap((paragraph) => wrapParagraph(paragraph, face, room))
}

function wrapParagraph(paragraph: string, face: Face, room: number): string[] {
  const blank = wordsWidth(' ', face)
  const lines: string[] = []
  let line = ''
  let used = 0
  for (const word of paragraph.split(/\s+/u).filter((part) => part !== '')) {
    for (const part of wordsWidth(word, face) > room ? breakWord(word, face, room) : [word]) {
      const width = wordsWidth(part, face)
      if (line !== '' && used + blank + width > room) {
        lines.push(line)
        line = ''
        used = 0
      }
      used += (line === '' ? 0 : blank) + width
      line += (line === '' ? '' : ' ') + part
    }
  }
  return [...lines, line]
}

function breakWord(word: string, face: Face, room: number): string[] {
  const parts: string[] = []
  let part = ''
  for (const letter of word) {
    if (part !== '' && wordsWidth(part + letter, face) > room) {
      parts.push(part)
      part = ''
    }
    part += letter
  }
  return [...parts, part]
}
