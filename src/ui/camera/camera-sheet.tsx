import { useEffect, useRef, useState } from 'preact/hooks'
import { preparePhoto } from '../../device/photo.ts'
import type { ReadingCheck } from '../../plan/check.ts'
import { placeOf } from '../../plan/find.ts'
import type { Expectation } from '../../reader/expectation.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { decimalsOf } from '../format.ts'
import { Sheet } from '../parts/sheet.tsx'
import { useWakeLock } from '../wake-lock.ts'
import { Consent } from './consent.tsx'
import { decimalsShown, recallDisplay, rememberDisplay, usualGuide, type Display } from './display.ts'
import { Finder } from './finder.tsx'
import { doubtfulPlaces, type Read } from './read.ts'
import { jpegOf } from './still.ts'
import type { Shown } from './use-live.ts'
import { useReader } from './use-reader.ts'
import './camera.css'

/** From the display to a number that a person takes: consent and fetching once, then the viewfinder. */
export const CameraSheet = ({ check, onRead, onClose }: { check: ReadingCheck; onRead(read: Read): void; onClose(): void }) => {
  const { phone, lab, plan } = useApp()
  const words = useWords()
  const { stage, fetch, fail } = useReader()
  const [display, setDisplay] = useState<Display>()
  const guide = useRef(usualGuide)
  const [isTaking, setTaking] = useState(false)
  useWakeLock(true)
  useEffect(() => {
    void recallDisplay(phone.drafts, check.id).then((kept) => {
      guide.current = kept?.guide ?? usualGuide
      setDisplay(kept ?? { guide: usualGuide })
    })
  }, [])

  const expectation: Expectation = {
    minimum: check.instrument.low,
    maximum: check.instrument.high,
    decimals: display?.decimals ?? decimalsOf(check.step),
    ...(display?.kind ? { kind: display.kind } : {}),
    recent: (lab.value.state.checks[check.id]?.recent ?? []).flatMap(({ value }) => (value === undefined ? [] : [value])),
  }
  const take = async ({ reading, canvas }: Shown): Promise<void> => {
    const { text, cutOut, certain } = reading
    // Once told to be segments it stays so: their objection is not to be lost by one number that nobody mended yet.
    const kind = display?.kind === 'segments' ? 'segments' : (reading.kind ?? display?.kind)
    if (isTaking || text === null || !cutOut) return
    setTaking(true)
    const prepared = await preparePhoto({ width: canvas.width, height: canvas.height, jpeg: (quality) => jpegOf(canvas, quality) })
    if (!prepared.ok) {
      setTaking(false)
      fail('photo')
      return
    }
    buzz('saved')
    await rememberDisplay(phone.drafts, check.id, { guide: guide.current, decimals: decimalsShown(text), ...(kind ? { kind } : {}) })
    onRead({ text, certain, doubtful: doubtfulPlaces(reading), cutOut, photo: prepared.photo })
  }
  return (
    <Sheet title={words.camera.title} closeName={words.shell.close} onClose={onClose}>
      {stage.at === 'ready' && display ? (
        <Finder
          reader={stage.reader}
          expectation={expectation}
          start={display.guide}
          light={placeOf(plan.value!.plan, check.station).machine.light}
          isTaking={isTaking}
          onGuide={(next) => (guide.current = next)}
          onTake={(shown) => void take(shown).catch(() => (setTaking(false), fail('photo')))}
          onFault={fail}
          onKey={onClose}
        />
      ) : (
        <Consent stage={stage} fetch={fetch} onKey={onClose} />
      )}
    </Sheet>
  )
}
