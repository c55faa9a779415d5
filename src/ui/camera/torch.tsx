import { useEffect, useState } from 'preact/hooks'
import type { Machine } from '../../plan/machine.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { LightIcon } from '../parts/icons.tsx'
import { Sheet } from '../parts/sheet.tsx'
import type { Camera } from './camera.ts'

/** The lamp, never lit without asking: white light cannot be taken back from a film. */
export const Torch = ({ camera, light }: { camera: Camera; light: Machine['light'] }) => {
  const words = useWords()
  const say = words.camera.torch
  const [isOn, setOn] = useState(false)
  const [isAsked, setAsked] = useState(false)
  const [failed, setFailed] = useState(false)
  useEffect(() => setOn(false), [camera])
  if (!camera.torch) return null
  const { torch } = camera
  const put = (next: boolean): void => {
    setAsked(false)
    torch(next).then(
      () => (setFailed(false), setOn(next)),
      () => setFailed(true),
    )
  }
  return (
    <>
      <Button onPress={() => (isOn ? put(false) : setAsked(true))}><LightIcon /> {isOn ? say.off : say.on}</Button>
      {failed ? <p role="alert">{say.failed}</p> : null}
      {isAsked ? (
        <Sheet title={say.title} closeName={words.shell.close} onClose={() => setAsked(false)}>
          <Banner kind="warn" title={say.fogs} />
          {light === 'panchromatic' ? <p><strong>{say.panchromatic}</strong></p> : null}
          <Button kind="go" onPress={() => setAsked(false)}>{say.not}</Button>
          <Button kind="stop" wide onPress={() => put(true)}>{say.sure}</Button>
        </Sheet>
      ) : null}
    </>
  )
}
