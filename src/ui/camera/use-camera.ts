import { useEffect, useState } from 'preact/hooks'
import { NoCamera, openCamera, type Camera, type CameraFault } from './camera.ts'

/** The camera while it is wanted and the page is seen; let go otherwise, since a camera left open warms the phone and lights its lamp. */
export const useCamera = (isWanted: boolean): { camera: Camera | undefined; fault: CameraFault | undefined; again(): void } => {
  const [camera, setCamera] = useState<Camera>()
  const [fault, setFault] = useState<CameraFault>()
  const [isSeen, setSeen] = useState(document.visibilityState === 'visible')
  const [tries, setTries] = useState(0)
  useEffect(() => {
    const look = (): void => setSeen(document.visibilityState === 'visible')
    document.addEventListener('visibilitychange', look)
    return () => document.removeEventListener('visibilitychange', look)
  }, [])
  useEffect(() => {
    if (!isWanted || !isSeen) return
    let isOver = false
    let open: Camera | undefined
    openCamera().then(
      (it) => {
        if (isOver) it.close()
        else {
          open = it
          setCamera(it)
        }
      },
      (thrown: unknown) => {
        if (!(thrown instanceof NoCamera)) throw thrown
        if (!isOver) setFault(thrown.code)
      },
    )
    return () => {
      isOver = true
      open?.close()
      setCamera(undefined)
    }
  }, [isWanted, isSeen, tries])
  return {
    camera,
    fault,
    again: () => {
      setFault(undefined)
      setTries(tries + 1)
    },
  }
}
