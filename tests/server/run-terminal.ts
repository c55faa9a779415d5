import { spawn } from 'node:child_process'

/** A command as it is given on the server's machine. The test goes on hearing: a connection that the server closes meanwhile is not used again. */
export const runTerminal = async (command: string, words: readonly string[], env: Record<string, string> = {}): Promise<{ status: number | null; stdout: string; stderr: string }> => {
  const child = spawn(process.execPath, ['--import', 'tsx', `src/terminal/${command}.ts`, ...words], { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...env } })
  const said = { stdout: '', stderr: '' }
  for (const name of ['stdout', 'stderr'] as const) child[name].on('data', (chunk: Buffer) => (said[name] += chunk.toString()))
  const status = await new Promise<number | null>((resolve, reject) => {
    child.once('close', resolve)
    child.once('error', reject)
  })
  return { status, ...said }
}
