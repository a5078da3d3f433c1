/**
 * A random id, a UUID of version 4. `crypto.randomUUID` is there on secure addresses alone, and a shop's own network has
 * none; a library for it is half a kilobyte of a station's first load. Source: RFC 9562 section 5.4.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  // The version in the seventh byte, the variant in the ninth.
  const marked = bytes.map((byte, at) => (at === 6 ? (byte & 15) | 64 : at === 8 ? (byte & 63) | 128 : byte))
  const hex = [...marked].map((byte) => byte.toString(16).padStart(2, '0')).join('')
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-')
}
