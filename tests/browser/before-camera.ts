import { readFileSync } from 'node:fs'
import type { Screen } from './engines/screen.ts'

/**
 * Holds a picture before the camera until the page is loaded anew. No engine but Chromium films a file: the one that it makes up is asked
 * for and let go as ever, and a moving copy of the picture is handed on in its place.
 */
export const holdBeforeCamera = (page: Screen, picture: string): Promise<void> =>
  page.evaluate(async (jpeg) => {
    const bitmap = await createImageBitmap(new Blob([Uint8Array.from(atob(jpeg), (it) => it.charCodeAt(0))], { type: 'image/jpeg' }))
    const canvas = document.createElement('canvas')
    canvas.width = bitmap.width
    canvas.height = bitmap.height
    const draw = (): void => canvas.getContext('2d')!.drawImage(bitmap, 0, 0)
    const devices = navigator.mediaDevices
    const own = devices.getUserMedia.bind(devices)
    devices.getUserMedia = async (asked) => {
      const made = await own(asked)
      const seen = canvas.captureStream(10)
      draw()
      const drawing = setInterval(draw, 100)
      for (const track of seen.getTracks()) {
        const stop = track.stop.bind(track)
        track.stop = () => {
          stop()
          clearInterval(drawing)
          made.getTracks().forEach((it) => it.stop())
        }
      }
      return seen
    }
  }, readFileSync(picture).toString('base64'))

/** Seconds of film that the viewfinder has shown; it grows while the camera runs. */
export const secondsSeen = (page: Screen): Promise<number> => page.locator('.meter-picture video').evaluate((it) => ((it as HTMLVideoElement).videoWidth ? (it as HTMLVideoElement).currentTime : 0))
