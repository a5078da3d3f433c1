const browsers = [
  ['Edge', /Edg(?:e|A|iOS)?\//],
  ['Opera', /OPR\//],
  ['Samsung Internet', /SamsungBrowser\//],
  ['Firefox', /Firefox\/|FxiOS\//],
  ['Chrome', /Chrome\/|CriOS\//],
  ['Safari', /Safari\//],
] as const

const systems = [
  ['iPad', /iPad/],
  ['iPhone', /iPhone/],
  ['Android', /Android/],
  ['Windows', /Windows/],
  ['a Chromebook', /CrOS/],
  ['a Mac', /Macintosh|Mac OS X/],
  ['Linux', /Linux/],
] as const

const firstOf = (list: readonly (readonly [string, RegExp])[], text: string): string | undefined =>
  list.find(([, sign]) => sign.test(text))?.[0]

/**
 * What a browser says it is, in a few words, for the list of sessions. It is no proof of anything.
 *
 * Range: text. Formula: the first browser and the first system whose mark is in it.
 * Example: `browserWords('Mozilla/5.0 (Windows NT 10.0) Firefox/140.0')` → "Firefox on Windows"; of nothing: "A browser".
 */
export function browserWords(text: string): string {
  const [browser, system] = [firstOf(browsers, text) ?? 'A browser', firstOf(systems, text)]
  return system === undefined ? browser : `${browser} on ${system}`
}
