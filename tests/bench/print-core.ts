import { coreFigures } from './core'

/** What `npm run bench` asks of a process of its own. */
process.stdout.write(JSON.stringify(coreFigures()))
