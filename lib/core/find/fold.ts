/** Letters that stay one letter when accents are taken off, as they are commonly typed without them. From memory. */
const oneLetter: Readonly<Record<string, string>> = {
  ...{ ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' },
}

/**
 * Text without accents and capitals.
 * Source: Unicode Standard Annex 15 (NFKD: a letter and its accents apart).
 * Example: "Böhm, ŁUKASZ" → "bohm, lukasz".
 */
export const fold = (text: string): string =>
  text
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => oneLetter[letter] ?? letter)

/**
 * The words of a text: letters and figures, without accents and capitals.
 * Derived: whatever is neither letter nor figure parts two words.
 * Example: "Ann-Marie  O'Neil" → ["ann", "marie", "o", "neil"].
 */
export const foldedWords = (text: string): string[] => fold(text).match(/[\p{L}\p{N}]+/gu) ?? []

/** As German names are typed without their dots: "Müller" is also "mueller". */
const umlauts: Readonly<Record<string, string>> = { ä: 'ae', ö: 'oe', ü: 'ue' }
const withoutUmlauts = (text: string): string =>
  text
    .normalize('NFC')
    .toLowerCase()
    .replace(/[äöü]/g, (letter) => umlauts[letter] ?? letter)

/** The words of one field, and the field without its spaces and hyphens where it has more than one word. */
function waysToType(field: string): string[] {
  const words = foldedWords(field)
  return words.length > 1 ? [...words, words.join('')] : words
}

/**
 * What is kept of some fields to find them by: each word begins after a space, so that " an" finds what begins with "an".
 * Derived: words, each field run together, and umlauts written out; each once.
 * Example: ["Ann-Marie Böhm"] → " ann marie bohm annmariebohm boehm annmarieboehm".
 */
export function textToFind(fields: readonly string[]): string {
  const ways = fields.flatMap((field) => [...waysToType(field), ...waysToType(withoutUmlauts(field))])
  return [...new Set(ways)].map((word) => ` ${word}`).join('')
}

/**
 * The parts that must all be in a text that is looked for, whatever their order. Three letters and more may stand
 * anywhere in it; fewer are the beginning of a word, which the space before them says.
 * Derived: typed parts are parted by spaces; hyphens and dots inside a part are left out.
 * Example: "Böhm an" → ["bohm", " an"].
 */
export function partsAsked(asked: string): string[] {
  const parts = asked.split(/\s+/).map((part) => foldedWords(part).join(''))
  return [...new Set(parts.filter((part) => part !== ''))].map((part) =>
    [...part].length < lettersAnywhere ? ` ${part}` : part,
  )
}

/** The search index holds three letters and more. */
const lettersAnywhere = 3
