import { generateKeyPairSync, sign } from 'node:crypto'

/** A certificate made for one run, so that no key is kept anywhere. DER by ITU-T X.690, certificate by RFC 5280. */

function tlv(tag: number, ...parts: readonly Buffer[]): Buffer {
  const value = Buffer.concat(parts)
  const { length } = value
  const size = length < 128 ? [length] : length < 256 ? [0x81, length] : [0x82, length >> 8, length & 255]
  return Buffer.concat([Buffer.from([tag, ...size]), value])
}
const sequence = (...parts: readonly Buffer[]) => tlv(0x30, ...parts)
const oid = (hex: string) => tlv(0x06, Buffer.from(hex, 'hex'))
const octets = (part: Buffer) => tlv(0x04, part)
const time = (at: Date) => tlv(0x18, Buffer.from(at.toISOString().replaceAll(/[-:T]|\.\d+/g, '')))

const ecdsaWithSha256 = sequence(oid('2a8648ce3d040302'))
const commonName = oid('550403')
const basicConstraints = oid('551d13')
const subjectAltName = oid('551d11')

export type OwnCertificate = { readonly key: string; readonly cert: string }

/** For a host name, signed by itself. */
export function ownCertificate(
  host = 'localhost',
  { from = new Date('2020-01-01T00:00:00Z'), to = new Date('2100-01-01T00:00:00Z') } = {},
): OwnCertificate {
  const { privateKey, publicKey } = generateKeyPairSync('ec', { namedCurve: 'prime256v1' })
  const name = sequence(tlv(0x31, sequence(commonName, tlv(0x0c, Buffer.from(host)))))
  const extensions = sequence(
    sequence(basicConstraints, octets(sequence(tlv(0x01, Buffer.from([0xff]))))),
    sequence(subjectAltName, octets(sequence(tlv(0x82, Buffer.from(host))))),
  )
  const body = sequence(
    tlv(0xa0, tlv(0x02, Buffer.from([2]))),
    tlv(0x02, Buffer.from([1])),
    ecdsaWithSha256,
    name,
    sequence(time(from), time(to)),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    tlv(0xa3, extensions),
  )
  const signature = tlv(0x03, Buffer.from([0]), sign('sha256', body, privateKey))
  const lines = sequence(body, ecdsaWithSha256, signature)
    .toString('base64')
    .replaceAll(/(.{64})/g, '$1\n')
  return {
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
    cert: `-----BEGIN CERTIFICATE-----\n${lines}\n-----END CERTIFICATE-----\n`,
  }
}
