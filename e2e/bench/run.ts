import { browserFigures } from './cut-bench'
import { coreFigures } from '../../tests/bench/core'

/** `npm run bench`: every figure of speed in a table; with --json also as one object on the last line. Needs a build. */
const figures = [...coreFigures(), ...(await browserFigures())]
for (const { work, measured, unit, goal, met } of figures) {
  process.stdout.write(
    `${met ? 'met   ' : 'MISSED'}  ${work}: ${measured.toPrecision(3)} ${unit} (goal ${goal})\n`,
  )
}
if (process.argv.includes('--json')) process.stdout.write(`${JSON.stringify({ figures })}\n`)
process.exitCode = figures.every(({ met }) => met) ? 0 : 1
