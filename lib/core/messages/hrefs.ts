/** Half a letter cannot be written in an address; the sign for "no letter" stands in its place. */
const whole = (text: string): string => text.replaceAll(/\p{Cs}/gu, '\uFFFD')

/** In a mail address of a link every sign but the @ between its two parts is encoded. */
function addressPart(address: string): string {
  const at = address.lastIndexOf('@')
  return at < 0
    ? encodeURIComponent(whole(address))
    : `${encodeURIComponent(whole(address.slice(0, at)))}@${encodeURIComponent(whole(address.slice(at + 1)))}`
}

const lines = (text: string, end: string): string => whole(text).replaceAll(/\r\n|\r|\n/g, end)

/**
 * The link that opens a person's own mail program with this mail in it. Source: RFC 6068, line breaks as CR LF (section 5).
 *
 * Example: to a@b.example, 'Job & heads', 'Hello,\nready.' → 'mailto:a@b.example?subject=Job%20%26%20heads&body=Hello%2C%0D%0Aready.'
 */
export const mailtoHref = (to: string, subject: string, body: string): string =>
  `mailto:${addressPart(to)}?subject=${encodeURIComponent(lines(subject, ' '))}&body=${encodeURIComponent(lines(body, '\r\n'))}`

/**
 * The link that opens a text message to a phone. Source: RFC 5724; one line feed for a line break is common practice.
 *
 * Example: (555) 010-4477, 'Ready.' → 'sms:5550104477?body=Ready.'
 */
export const smsHref = (phone: string, body: string): string =>
  `sms:${phone.replaceAll(/[^\d+]/g, '')}?body=${encodeURIComponent(lines(body, '\n'))}`
