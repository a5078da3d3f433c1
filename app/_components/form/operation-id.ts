/**
 * A random UUID, version 4, for one attempt at one change. `crypto.randomUUID` exists only on HTTPS; a shop's own network
 * is often plain HTTP, where random values are still to be had.
 */
export function newOperationId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16))
  const hex = Array.from(bytes, (byte, at) => {
    const marked = at === 6 ? (byte & 0x0f) | 0x40 : at === 8 ? (byte & 0x3f) | 0x80 : byte
    return marked.toString(16).padStart(2, '0')
  }).join('')
  return hex.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5')
}
