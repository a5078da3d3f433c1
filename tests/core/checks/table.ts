import { fileURLToPath } from 'node:url'
import { format, resolveConfig } from 'prettier'
import { oursOf, type Check, type Section } from './check'
import { sections } from './sections'

export const tablePath = fileURLToPath(new URL('../../../lib/core/CHECKS.md', import.meta.url))

/** What another machine's last binary digits could change is not printed. */
const digits = 6
const rounded = (value: number): string => String(Number(value.toPrecision(digits)))

function difference({ printed, tolerance }: Check, ours: number): string {
  const off = ours - printed
  const unseen = Math.max(Math.abs(printed) * 0.5 * 10 ** (1 - digits), tolerance / 1000)
  return Math.abs(off) <= unseen ? '0' : String(Number(off.toPrecision(2)))
}

function row(check: Check): string {
  const ours = oursOf(check)
  const withUnit = (value: number) => `${rounded(value)} ${check.unit}`.trim()
  const cells = [check.quantity, check.source, withUnit(check.printed), withUnit(ours), difference(check, ours)]
  return `| ${cells.join(' | ')} |`
}

const tableOf = ({ title, checks }: Section): string =>
  [
    `## ${title}`,
    '',
    '| quantity | source | printed | ours | difference |',
    '| --- | --- | ---: | ---: | ---: |',
    ...checks.map(row),
  ].join('\n')

/** The whole page, as the project's formatter leaves it. */
export async function checksPage(): Promise<string> {
  const count = sections.reduce((sum, { checks }) => sum + checks.length, 0)
  const page = [
    '# Checks of the core against the outside',
    '',
    `${count} figures of the core, each beside the same figure from outside: printed, from a standard, from another`,
    'library or another method, or worked by hand. None of them was taken from the core itself. The tests run every one.',
    '“The same” is the line above. Written by `npm run checks`.',
    '',
    ...sections.map((section) => `${tableOf(section)}\n`),
  ].join('\n')
  const config = await resolveConfig(tablePath)
  return format(page, { ...config, parser: 'markdown' })
}
