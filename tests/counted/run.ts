import { countHouse } from './house'

/** `npm run count`: what the sources say, and what the tests hold (they print nothing when all is well). */
for (const { what, now, atMost } of countHouse()) {
  const verdict = atMost === null ? '      ' : now <= atMost ? 'met   ' : 'MISSED'
  process.stdout.write(`${verdict}  ${what}: ${now}${atMost === null ? '' : ` (at most ${atMost})`}\n`)
}
