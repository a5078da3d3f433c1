/**
 * The seed of a head: the same head looked at twice has the same days.
 *
 * Source: FNV-1a of 32 bits (G. Fowler, L. C. Noll, K.-P. Vo). Example: '' → 2166136261; 'a' → 3826002220.
 */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5
  for (let place = 0; place < text.length; place++) {
    hash = Math.imul(hash ^ text.charCodeAt(place), 0x01000193)
  }
  return hash >>> 0
}

/**
 * A number between 0 and 1 for one draw of one round. It hangs on nothing but seed, round and draw, so that one head more in
 * a queue moves no other draw.
 *
 * Source: the finalizer of MurmurHash3 (A. Appleby, public domain), 32 bits. Example: its share below 0.5 is half.
 */
export function drawAt(seed: number, round: number, draw: number): number {
  let hash = seed ^ Math.imul(round + 1, 0x9e3779b1) ^ Math.imul(draw + 1, 0x85ebca77)
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b)
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35)
  hash ^= hash >>> 16
  return (hash >>> 0) / 0x1_0000_0000
}
