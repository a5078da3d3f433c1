import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { sizeFigures } from './at-size'
import { browserFigures } from './cut-bench'
import { deedFigures } from './deeds'
import { phoneFigures } from './phone'
import { twoProcessFigures, workdayFigures } from './workday-figures'
import type { Figure } from '../../tests/bench/measure'

const bench = join(import.meta.dirname, '..', '..', 'tests', 'bench')

/** In a process of its own, without what a script loader adds to the code. */
function figuresOf(script: string): Figure[] {
  const loader = join(bench, 'plain-loader.mjs')
  return JSON.parse(
    execFileSync(process.execPath, ['--import', loader, join(bench, script)], { encoding: 'utf8' }),
  ) as Figure[]
}

/** Parts of the table by name; without a name all of them. */
const rows: Readonly<Record<string, () => Figure[] | Promise<Figure[]>>> = {
  core: () => figuresOf('print-core.ts'),
  papers: () => figuresOf('print-papers.ts'),
  slider: browserFigures,
  deeds: deedFigures,
  size: sizeFigures,
  phone: phoneFigures,
  day: workdayFigures,
  two: twoProcessFigures,
}

/** `npm run bench [part …]`: every figure of speed in a table; with --json also as one object on the last line. Needs a build. */
const named = process.argv.slice(2).filter((word) => word in rows)
const figures: Figure[] = []
for (const [name, measure] of Object.entries(rows)) {
  if (named.length === 0 || named.includes(name)) figures.push(...(await measure()))
}
for (const { work, measured, unit, goal, met } of figures) {
  process.stdout.write(`${met ? 'met   ' : 'MISSED'}  ${work}: ${measured.toPrecision(3)} ${unit} (goal ${goal})\n`)
}
if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify({ figures })}\n`)
process.exitCode = figures.every(({ met }) => met) ? 0 : 1
