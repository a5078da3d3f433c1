import { writeSync } from 'node:fs'
import { openClient } from '@/lib/data/client'

/**
 * A process that writes until it is killed, and says a number as soon as its write is acknowledged. Run with the
 * address of the database and a name for the round.
 */
const [url = '', round = ''] = process.argv.slice(2)
const client = await openClient(url)

for (let number = 0; ; number++) {
  const name = `${round} ${number}`
  if (number % 2 === 0) await client.counter.create({ data: { name, value: number } })
  else {
    await client.$transaction(async (tx) => {
      await tx.counter.create({ data: { name, value: number } })
      await tx.operation.create({
        data: { id: name, actorId: 'a', hash: 'h', result: 'null', at: new Date(0) },
      })
    })
  }
  writeSync(1, `${name}\n`) // at once: what waits in a buffer would die with us
}
