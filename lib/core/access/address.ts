/**
 * The address that tries are counted by: of IPv4 all of it, of IPv6 the first four groups, since one household or one
 * phone has all the rest to itself. IPv4 inside IPv6 is IPv4.
 *
 * Range: text; what is no address is "unknown", which counts like one address.
 * Example: `countedAddress('::ffff:10.0.0.7')` → `10.0.0.7`; `countedAddress('2001:db8:1:2:3:4:5:6')` → `2001:db8:1:2::/64`.
 */
export function countedAddress(text: string): string {
  const address = text.trim().toLowerCase().replace(/%.*$/, '')
  const v4 = /^(?:::ffff:)?(\d{1,3}(?:\.\d{1,3}){3})$/.exec(address)?.[1]
  if (v4 !== undefined) return v4.split('.').every((part) => Number(part) <= 255) ? v4 : 'unknown'
  if (!/^[\da-f:]{2,39}$/.test(address) || !address.includes(':')) return 'unknown'
  if (address === '::1') return '::1'
  const [head = '', tail] = address.split('::')
  const first = head === '' ? [] : head.split(':')
  const last = tail === undefined || tail === '' ? [] : tail.split(':')
  const filled =
    tail === undefined
      ? first
      : [...first, ...Array<string>(Math.max(0, 8 - first.length - last.length)).fill('0'), ...last]
  return `${filled
    .slice(0, 4)
    .map((group) => group.replace(/^0+(?=.)/, ''))
    .join(':')}::/64`
}

/**
 * Who asks, from the address of the connection and what proxies on the way have written down. Only a proxy that the shop
 * names is believed, and of the list only what such proxies wrote: the last entry that is no proxy of the shop's.
 *
 * Example: a connection from 10.0.0.2, a proxy of the shop, with the list "6.6.6.6, 10.0.0.9" → `10.0.0.9`; from
 * 10.0.0.3, no proxy of the shop, with any list → `10.0.0.3`.
 */
export function askingAddress(connection: string, forwarded: string, proxies: readonly string[]): string {
  const trusted = new Set(proxies.map(countedAddress))
  const peer = countedAddress(connection)
  if (!trusted.has(peer)) return peer
  const listed = forwarded.split(',').map((entry) => entry.trim())
  const nearest = listed.findLast((entry) => entry !== '' && !trusted.has(countedAddress(entry)))
  return nearest === undefined ? peer : countedAddress(nearest)
}
