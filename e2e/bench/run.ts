import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { browserFigures } from './cut-bench'
import type { Figure } from '../../tests/bench/measure'

const bench = join(import.meta.dirname, '..', '..', 'tests', 'bench')

/** In a process of its own, without what a script loader adds to the code. */
function figuresOf(script: string): Figure[] {
  const loader = join(bench, 'plain-loader.mjs')
  return JSON.parse(
    execFileSync(process.execPath, ['--import', loader, join(bench, script)], { encoding: 'utf8' }),
  ) as Figure[]
}

/** `npm run bench`: every figure of speed in a table; with --json also as one object on the last line. Needs a build. */
const figures = [...figuresOf('print-core.ts'), ...figuresOf('print-papers.ts'), ...(await browserFigures())]
for (const { work, measured, unit, goal, met } of figures) {
  process.stdout.write(`${met ? 'met   ' : 'MISSED'}  ${work}: ${measured.toPrecision(3)} ${unit} (goal ${goal})\n`)
}
if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify({ figures })}\n`)
process.exitCode = figures.every(({ met }) => met) ? 0 : 1
