import { useEffect, useRef, useState } from 'preact/hooks'
import type { MeterReader } from '../../device/meter-reader.ts'
import type { Machine } from '../../plan/machine.ts'
import type { Expectation } from '../../reader/expectation.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import type { Guide } from './display.ts'
import { GuideBox } from './guide-box.tsx'
import { ReadingPanel } from './reading-panel.tsx'
import { openStill, type StillFault } from './still.ts'
import { Torch } from './torch.tsx'
import { useCamera } from './use-camera.ts'
import { faultOf, readCanvas, useLive, type Shown } from './use-live.ts'

interface FinderProps {
  reader: MeterReader
  expectation: Expectation
  start: Guide
  light: Machine['light']
  isTaking: boolean
  onGuide(guide: Guide): void
  onTake(shown: Shown): void
  onFault(code: ReturnType<typeof faultOf>): void
  onKey(): void
}

/** The picture with its guide box, live or from the library; under it what was read, and the thumb's buttons. */
export const Finder = ({ reader, expectation, start, light, isTaking, onGuide, onTake, onFault, onKey }: FinderProps) => {
  const words = useWords().camera
  const [guide, setGuide] = useState(start)
  const [still, setStill] = useState<HTMLCanvasElement>()
  const [stillFault, setStillFault] = useState<StillFault>()
  const [ofStill, setOfStill] = useState<Shown>()
  const video = useRef<HTMLVideoElement>(null)
  const { camera, fault, again } = useCamera(!still)
  const live = useLive(reader, video, guide, expectation, camera !== undefined && !still && !isTaking, onFault)
  const last = useRef<Shown | undefined>(undefined)
  // While the picture taken is being kept, the camera rests and its number stays in sight.
  if (live) last.current = live
  const shown = still ? ofStill : isTaking ? last.current : live

  useEffect(() => {
    if (video.current && camera) video.current.srcObject = camera.stream
  }, [camera])
  const readStill = (canvas: HTMLCanvasElement, box: Guide): void => {
    readCanvas(reader, canvas, box, expectation).then(
      (reading) => setOfStill({ reading, canvas, at: performance.now() }),
      (thrown: unknown) => onFault(faultOf(thrown)),
    )
  }
  const choose = async (file: File | undefined): Promise<void> => {
    if (!file) return
    const opened = await openStill(file)
    setStillFault(opened.ok ? undefined : opened.fault)
    setOfStill(undefined)
    setStill(opened.ok ? opened.canvas : undefined)
    if (opened.ok) readStill(opened.canvas, guide)
  }
  const change = (next: Guide): void => {
    setGuide(next)
    onGuide(next)
    // What was read stood in another box.
    setOfStill(undefined)
  }
  const text = shown?.reading.text
  return (
    <div class="meter-finder">
      {fault && !still ? (
        <Banner kind="stop" title={words.faults[fault]} />
      ) : (
        <div class="meter-picture">
          {still ? <StillPicture of={still} /> : <video ref={video} autoplay muted playsInline />}
          <GuideBox guide={guide} onChange={change} />
        </div>
      )}
      {stillFault ? <Banner kind="stop" title={words.stillFaults[stillFault]} /> : null}
      {fault && !still ? null : <ReadingPanel reading={shown?.reading} />}
      {still && !ofStill ? (
        <Button kind="go" onPress={() => readStill(still, guide)}>{words.readStill}</Button>
      ) : fault && !still ? (
        <Button kind="go" onPress={again}>{words.again}</Button>
      ) : (
        <Button kind="go" notYet={text && !isTaking ? undefined : words.takeNothing} onPress={() => onTake(shown!)}>
          {isTaking ? words.keeping : text ? words.take(text) : words.takeNothing}
        </Button>
      )}
      <div class="meter-tools">
        <label class="button">
          {words.library}
          <input type="file" accept="image/*" class="unseen" onChange={(event) => void choose(event.currentTarget.files?.[0])} />
        </label>
        {still ? <Button onPress={() => (setStill(undefined), setOfStill(undefined))}>{words.live}</Button> : camera ? <Torch camera={camera} light={light} /> : null}
        <Button onPress={onKey}>{words.key}</Button>
      </div>
    </div>
  )
}

const StillPicture = ({ of }: { of: HTMLCanvasElement }) => {
  const place = useRef<HTMLDivElement>(null)
  useEffect(() => place.current?.replaceChildren(of), [of])
  return <div ref={place} class="still" />
}
