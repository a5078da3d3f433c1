/**
 * Where to go after the sign-in: only a path of this app. One slash and then something else, because a browser reads
 * "//host" and "/\host" as another site; no control characters, which it drops before reading.
 */
export function localPath(text: string | undefined): string {
  if (text === undefined || text.length > 2000) return '/'
  return /^\/(?![/\\])[\x21-\x7e]*$/.test(text) && !text.includes('\\') ? text : '/'
}
