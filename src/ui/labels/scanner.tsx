import { useEffect, useRef, useState } from 'preact/hooks'
import { parseTankLabel, type ReadLabel, type TankLabel } from '../../rounds/tank-label.ts'
import { useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { useWakeLock } from '../wake-lock.ts'
import { openFindCode } from './find-code.ts'
import './labels.css'

/** Between two looks: five in a second are quicker than a hand that steadies itself, and leave the phone cool. */
const lookEveryMilliseconds = 200

export type CameraProblem = 'denied' | 'none' | 'busy' | 'fault'

/** The camera, looking for a tank label. What is found goes up at once; what is no label of ours is said, and looking goes on. */
export const Scanner = ({ onLabel }: { onLabel(label: TankLabel): void }) => {
  const words = useWords().labels
  const video = useRef<HTMLVideoElement>(null)
  const [problem, setProblem] = useState<CameraProblem>()
  const [wrong, setWrong] = useState<Extract<ReadLabel, { ok: false }>['code']>()
  const [tried, setTried] = useState(0)
  const found = useRef(onLabel)
  found.current = onLabel
  useWakeLock(problem === undefined)
  useEffect(() => {
    setProblem(undefined)
    return look({
      video: video.current!,
      onText: (text) => {
        const read = parseTankLabel(text, location.origin)
        if (read.ok) {
          buzz('saved')
          found.current(read.label)
          return true
        }
        setWrong(read.code)
        return false
      },
      onProblem: setProblem,
    })
  }, [tried])
  return (
    <div class="scanner">
      {problem ? (
        <Banner kind="stop" title={words.problems[problem].title}>
          <p>{words.problems[problem].more}</p>
          <Button wide onPress={() => setTried((count) => count + 1)}>{words.again}</Button>
        </Banner>
      ) : null}
      <div class="finder" hidden={problem !== undefined}>
        <video ref={video} muted playsInline aria-label={words.picture} />
        <svg viewBox="0 0 100 100" aria-hidden="true" focusable="false"><path d="M10 28V10h18 M72 10h18v18 M90 72v18H72 M28 90H10V72" /></svg>
      </div>
      <p role="status">{problem ? '' : wrong ? words.wrong[wrong] : words.aim}</p>
    </div>
  )
}

interface Looking {
  video: HTMLVideoElement
  /** Whether it was what was looked for; then looking ends. */
  onText(text: string): boolean
  onProblem(problem: CameraProblem): void
}

/** Opens the camera and looks until something is found or nobody looks any more. Gives the way to end it, which lets the camera go. */
const look = ({ video, onText, onProblem }: Looking): (() => void) => {
  let over = false
  let stream: MediaStream | undefined
  let timer: ReturnType<typeof setTimeout> | undefined
  const end = (): void => {
    over = true
    clearTimeout(timer)
    for (const track of stream?.getTracks() ?? []) track.stop()
    video.srcObject = null
  }
  const run = async (): Promise<void> => {
    if (!navigator.mediaDevices?.getUserMedia) return onProblem('none')
    const [opened, findCode] = await Promise.all([
      navigator.mediaDevices.getUserMedia({ audio: false, video: { facingMode: 'environment', width: { ideal: 1280 }, height: { ideal: 720 } } }),
      openFindCode(),
    ])
    stream = opened
    if (over) return end()
    video.srcObject = stream
    await video.play()
    const again = async (): Promise<void> => {
      if (over) return
      const text = video.readyState >= HTMLMediaElement.HAVE_CURRENT_DATA ? await findCode(video) : undefined
      if (over) return
      if (text !== undefined && onText(text)) return end()
      timer = setTimeout(() => void again().catch(fail), lookEveryMilliseconds)
    }
    await again()
  }
  const fail = (thrown: unknown): void => {
    // Closed while the camera was still opening: nobody waits for it.
    if (over) return
    end()
    onProblem(problemOf(thrown))
  }
  run().catch(fail)
  return end
}

const problemOf = (thrown: unknown): CameraProblem => {
  const name = thrown instanceof Error || thrown instanceof DOMException ? thrown.name : ''
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'denied'
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return 'none'
  return name === 'NotReadableError' || name === 'AbortError' ? 'busy' : 'fault'
}
