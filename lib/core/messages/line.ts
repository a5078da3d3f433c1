/**
 * A text on one line: every line break and control character becomes a space. What goes into the head of a mail passes
 * through here, so that nothing typed can begin a header of its own.
 *
 * Example: 'Ready\r\nBcc: a@b.example' → 'Ready Bcc: a@b.example'
 */
export const oneLine = (text: string): string => text.replaceAll(/[\p{Cc}\u2028\u2029]+/gu, ' ').trim()

/**
 * One mail address and nothing else: no list, no name before it, no space. Narrower than RFC 5322 allows (no quoted local
 * part, no comment), as forms are.
 *
 * Example: 'wren@example.com' → true; 'a@b.example, c@d.example' → false
 */
export const isMailAddress = (text: string): boolean =>
  text.length <= 254 &&
  /^[^\s<>()[\]\\,;:@"\p{Cc}]{1,64}@[^\s<>()[\]\\,;:@"\p{Cc}]+\.[^\s<>()[\]\\,;:@".\p{Cc}]+$/u.test(text)
