import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const folder = fileURLToPath(new URL('.', import.meta.url))

/** What only the benchmark compares with has a list of its own, so that installing the app does without it. */
export const installOwnPackages = (): void => {
  if (!existsSync(`${folder}node_modules/.package-lock.json`)) execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: folder, stdio: 'inherit' })
}
