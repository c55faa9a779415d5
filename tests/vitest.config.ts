import { defineConfig } from 'vitest/config'

const root = new URL('..', import.meta.url).pathname

/** What every engine must be able to do. */
const engine = (name: string) => ({
  extends: true as const,
  test: {
    name,
    env: { ENGINE: name },
    include: ['main-job', 'home-screen', 'strip', 'trends'].map((it) => `tests/browser/${it}.test.ts`),
    setupFiles: ['tests/setup.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
})

export default defineConfig({
  root,
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    // A condition is awaited; the time is only there so that a hung page ends.
    expect: { poll: { timeout: 60_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          // Properties over random baths and real servers on two cores.
          testTimeout: 60_000,
          hookTimeout: 60_000,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**', 'tests/long/**', '**/node_modules/**'],
          setupFiles: ['tests/setup.ts'],
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          setupFiles: ['tests/setup.ts'],
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
      engine('firefox'),
      engine('webkit'),
      {
        extends: true,
        test: {
          name: 'long',
          include: ['tests/long/**/*.test.ts'],
          setupFiles: ['tests/setup.ts'],
          fileParallelism: false,
          testTimeout: 1_800_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
})
