/** Looks for a QR code in one picture; undefined where there is none. */
export type FindCode = (video: HTMLVideoElement) => Promise<string | undefined>

interface Detector {
  detect(source: HTMLVideoElement): Promise<{ rawValue: string }[]>
}
interface DetectorMaker {
  new (options: { formats: string[] }): Detector
  getSupportedFormats(): Promise<string[]>
}

/** The browser's own reader where it has one; else a library, fetched when it is first wanted. */
export const openFindCode = async (): Promise<FindCode> => (await native()) ?? (await library())

const native = async (): Promise<FindCode | undefined> => {
  const maker = (globalThis as { BarcodeDetector?: DetectorMaker }).BarcodeDetector
  // Some systems have the interface and not the service behind it; they say so by an empty list.
  const formats: string[] | undefined = await maker?.getSupportedFormats().catch(() => [])
  if (!maker || !formats?.includes('qr_code')) return undefined
  const detector = new maker({ formats: ['qr_code'] })
  return async (video) => (await detector.detect(video))[0]?.rawValue
}

/** Pixels on the longer side: a label fills a third of the picture, and its squares are then some four pixels wide. */
const longestSide = 720

const library = async (): Promise<FindCode> => {
  const { default: jsQR } = await import('jsqr')
  const canvas = document.createElement('canvas')
  const context = canvas.getContext('2d', { willReadFrequently: true })
  if (!context) throw new Error('this browser gives no canvas')
  return (video) => {
    const scale = Math.min(1, longestSide / Math.max(video.videoWidth, video.videoHeight, 1))
    canvas.width = Math.round(video.videoWidth * scale)
    canvas.height = Math.round(video.videoHeight * scale)
    if (!canvas.width || !canvas.height) return Promise.resolve(undefined)
    context.drawImage(video, 0, 0, canvas.width, canvas.height)
    const { data, width, height } = context.getImageData(0, 0, canvas.width, canvas.height)
    return Promise.resolve(jsQR(data, width, height, { inversionAttempts: 'dontInvert' })?.data)
  }
}
