import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { readSettings } from '../../src/server/settings.ts'

const top = fileURLToPath(new URL('../..', import.meta.url))
const read = (name: string): string => readFileSync(join(top, 'src/server/deploy', name), 'utf8')
const hasSystemd = spawnSync('systemd-analyze', ['--version']).status === 0
if (!hasSystemd) console.log('\n*** SKIPPED: no systemd-analyze on this machine, so nobody has read the unit but us ***\n')

describe('the container', () => {
  const lines = read('Dockerfile').replace(/\\\n/g, ' ').split('\n')

  it('copies only what is there and what its own list of what may be sent lets through', () => {
    const allowed = read('Dockerfile.dockerignore').split('\n').filter((line) => line.startsWith('!')).map((line) => line.slice(1))
    const copied = lines.filter((line) => line.startsWith('COPY ') && !line.includes('--from=')).flatMap((line) => line.split(/\s+/).slice(1, -1))
    expect(copied.length).toBeGreaterThan(5)
    for (const path of copied) {
      expect(existsSync(join(top, path)), path).toBe(true)
      expect(allowed, path).toContain(path)
    }
  })

  it('starts what is there, as nobody in particular, with settings that the server knows', () => {
    const command = JSON.parse(lines.find((line) => line.startsWith('CMD '))!.slice(4)) as string[]
    expect(existsSync(join(top, command.at(-1)!))).toBe(true)
    expect(lines).toContain('USER node')
    const env = Object.fromEntries(lines.find((line) => line.startsWith('ENV '))!.slice(4).trim().split(/\s+/).map((pair) => pair.split('=')))
    expect(readSettings(env)).toMatchObject({ port: 8443, folder: '/data' })
    const { dependencies } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8')) as { dependencies: Record<string, string> }
    expect(Object.keys(dependencies)).toContain('tsx')
  })
})

describe('the service', () => {
  it.skipIf(!hasSystemd)('is a unit that systemd takes without a word, and is well shut in', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bathkeeper-unit-'))
    try {
      const unit = join(folder, 'bathkeeper.service')
      // Where Node is on this machine; systemd looks whether the program is there.
      writeFileSync(unit, read('bathkeeper.service').replace('/usr/bin/node', process.execPath))
      const verified = spawnSync('systemd-analyze', ['verify', '--recursive-errors=no', unit], { encoding: 'utf8' })
      expect(verified.stderr.split('\n').filter((line) => line.includes('bathkeeper'))).toEqual([])
      expect(verified.status).toBe(0)
      // Its own scale: 0 is shut in completely, 10 not at all; below 5 counts as "ok".
      const rated = spawnSync('systemd-analyze', ['security', '--offline=yes', '--threshold=30', unit], { encoding: 'utf8' })
      expect(rated.stdout + rated.stderr).toMatch(/Overall exposure level/)
      expect(rated.status, rated.stdout.split('\n').at(-2)).toBe(0)
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  })

  it('starts what is there', () => {
    const start = /^ExecStart=\S+ --import tsx (\S+)$/m.exec(read('bathkeeper.service'))
    expect(existsSync(join(top, start![1]!))).toBe(true)
  })
})
