import { spawn } from 'node:child_process'
import { executablePath, Laboratory } from '../browser/harness.ts'
import { firstLoad, isLater, kept, weight } from '../built-sizes.ts'
import type { Figure } from './figure.ts'
import { folder, installOwnPackages } from './own-packages.ts'

const categories = ['performance', 'accessibility', 'best-practices'] as const

interface Report {
  categories: Record<(typeof categories)[number], { score: number | null }>
  audits: Record<string, { title: string; score: number | null; scoreDisplayMode: string; displayValue?: string }>
}

const report = async (address: string): Promise<Report> => {
  const child = spawn(
    process.execPath,
    [`${folder}node_modules/lighthouse/cli/index.js`, address, '--output=json', '--quiet', '--form-factor=mobile', `--only-categories=${categories.join(',')}`, '--chrome-flags=--headless=new --no-sandbox --disable-gpu'],
    { env: { ...process.env, CHROME_PATH: executablePath }, stdio: ['ignore', 'pipe', 'inherit'] },
  )
  let text = ''
  child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()))
  const status = await new Promise<number | null>((done) => child.once('close', done))
  if (status !== 0) throw new Error(`Lighthouse ended with ${status}`)
  return JSON.parse(text) as Report
}

/** What a phone meets first, with Lighthouse's own slow network and processor. */
export const lighthouse = async (): Promise<Figure[]> => {
  installOwnPackages()
  const laboratory = new Laboratory()
  await laboratory.start()
  try {
    const { categories: found, audits } = await report(laboratory.origin)
    const scores = categories.map((name) => Math.round((found[name].score ?? 0) * 100))
    const wanting = Object.values(audits).filter(({ score, scoreDisplayMode }) => score !== null && score < 0.9 && scoreDisplayMode !== 'informative' && scoreDisplayMode !== 'notApplicable')
    const isMet = scores.every((score) => score === 100)
    return [
      {
        what: 'Lighthouse 12, mobile: performance, accessibility, best practices', figure: scores.join(' / '), against: '', ratio: null, goal: '100 / 100 / 100', isMet,
        ...(isMet ? {} : { note: wanting.map(({ title, displayValue }) => `${title}${displayValue ? ` ${displayValue}` : ''}`).join('; ') }),
      },
      ...sizes(),
    ]
  } finally {
    await laboratory.end()
  }
}

const sizes = (): Figure[] => {
  const size = (what: string, paths: readonly string[], most: number): Figure => {
    const kilobytes = weight(paths)
    return { what, figure: `${kilobytes.toFixed(1)} kB`, against: '', ratio: null, goal: `≤ ${most} kB`, isMet: kilobytes <= most, note: 'gzip' }
  }
  return [size('script before the first screen', firstLoad(), 60), size('precache, without the meter reader', kept().filter((path) => !isLater(path)), 400), size('— kept after it', kept().filter(isLater), 200)]
}
