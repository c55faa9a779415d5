/** Why there is no live picture; a still from the library and the pad always work. */
export type CameraFault = 'denied' | 'none' | 'busy' | 'notHere'

export class NoCamera extends Error {
  constructor(readonly code: CameraFault, cause?: unknown) {
    super(code, cause === undefined ? undefined : { cause })
    this.name = 'NoCamera'
  }
}

export interface Camera {
  stream: MediaStream
  /** Undefined where the camera has no lamp, or the browser does not say. */
  torch: ((isOn: boolean) => Promise<void>) | undefined
  /** Lets the camera go, its lamp with it. */
  close(): void
}

/** More pixels than this hold nothing that a reading needs. */
const wanted: MediaStreamConstraints = { audio: false, video: { facingMode: { ideal: 'environment' }, width: { ideal: 1280 }, height: { ideal: 960 } } }

const faults: Readonly<Record<string, CameraFault>> = {
  NotAllowedError: 'denied',
  SecurityError: 'denied',
  NotFoundError: 'none',
  OverconstrainedError: 'none',
  NotReadableError: 'busy',
  AbortError: 'busy',
}

/** Asks for the camera at the back. Throws `NoCamera`. */
export const openCamera = async (): Promise<Camera> => {
  // Absent on a page that is not secure, and switched off in some managed browsers.
  if (!navigator.mediaDevices?.getUserMedia) throw new NoCamera('notHere')
  let stream: MediaStream
  try {
    stream = await navigator.mediaDevices.getUserMedia(wanted)
  } catch (cause) {
    throw new NoCamera((cause instanceof DOMException && faults[cause.name]) || 'busy', cause)
  }
  const [track] = stream.getVideoTracks()
  // Not in the standard's base text, so not in the types: image capture adds it to a track's capabilities.
  const hasTorch = (track?.getCapabilities?.() as { torch?: boolean } | undefined)?.torch === true
  return {
    stream,
    torch: track && hasTorch ? (isOn) => track.applyConstraints({ advanced: [{ torch: isOn } as MediaTrackConstraintSet] }) : undefined,
    close: () => stream.getTracks().forEach((it) => it.stop()),
  }
}
