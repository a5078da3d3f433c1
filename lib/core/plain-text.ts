/** Control characters, but for a new line and a tab, and halves of a character. */
const noText = /[^\P{Cc}\t\n\r]|\p{Cs}/u

/**
 * Whether all of it is text that can be kept: one of the two databases stops at the first control character, and no paper
 * can print one.
 *
 * Range: any text. Formula: no character of Unicode's categories Cc and Cs, but for tab, line feed and carriage return.
 * Source: Unicode, general categories.
 * Example: `isText('3/8″ stud')` → true; `isText('a\\u0000b')` → false.
 */
export const isText = (text: string): boolean => !noText.test(text)
