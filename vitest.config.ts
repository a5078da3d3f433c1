import { join } from 'node:path'
import { defineConfig } from 'vitest/config'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

/** What takes longest goes first, or one of two workers waits for it at the end. Others by size, as is usual. */
const longest = ['data/killed.test.ts', 'data/prepare.test.ts', 'pdf/every-paper.test.ts']

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = longest.findIndex((name) => moduleId.endsWith(`tests/${name}`))
      return at === -1 ? longest.length : at
    }
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b))
  }
}

const resolve = {
  alias: {
    '@': import.meta.dirname,
    // Outside a bundler the real module throws on import.
    'server-only': join(import.meta.dirname, 'node_modules/server-only/empty.js'),
  },
}

/** Tests of what keeps no state: they may share a process, in which everything is loaded once. */
const pure = ['tests/core/**/*.test.ts', 'tests/drawing/**/*.test.ts', 'tests/schemas/**/*.test.ts']

const common = {
  setupFiles: ['tests/setup/console.ts', 'tests/setup/random.ts'],
  // Native modules and one client per process: processes, not threads.
  pool: 'forks' as const,
  testTimeout: 60_000,
  hookTimeout: 120_000,
}

export default defineConfig({
  test: {
    // Two, as the machine has cores.
    maxWorkers: 2,
    sequence: { sequencer: LongestFirst },
    projects: [
      { resolve, test: { name: 'pure', include: pure, isolate: false, ...common } },
      {
        resolve,
        test: {
          name: 'app',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: pure,
          globalSetup: 'tests/setup/global.ts',
          ...common,
        },
      },
    ],
  },
})
