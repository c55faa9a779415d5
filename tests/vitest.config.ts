import { defineConfig } from 'vitest/config'

const root = new URL('..', import.meta.url).pathname

/** What every engine must be able to do: the main job with a strip, a chart and a display in it; and, in the long run, those screens in every case. */
const engine = (name: string, isLong: boolean) => ({
  extends: true as const,
  test: {
    name: isLong ? `${name} long` : name,
    env: { ENGINE: name },
    include: (isLong ? ['strip', 'trends'] : ['main-job', 'home-screen']).map((it) => `tests/browser/${it}.test.ts`),
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
      ...['firefox', 'webkit'].flatMap((name) => [engine(name, false), engine(name, true)]),
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
