import type { ReaderFaultCode } from '../../../device/reader-fault.ts'
import type { Doubt } from '../../../reader/reader.ts'
import type { ReadingRefusal } from '../../../reader/quality.ts'
import type { CameraFault } from '../../camera/camera.ts'
import type { StillFault } from '../../camera/still.ts'

const ordinal = (at: number): string => ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'][at] ?? `${at + 1}th`

export const camera = {
  open: 'Read',
  openName: 'Read the display with the camera',
  title: 'Read the display',
  key: 'Key it instead',
  consent: {
    title: 'Fetch the meter reader?',
    more: 'It finds the number in a picture of the display. This phone fetches it once; then it works without a network.',
    private: 'Pictures are read on this phone. Only the one you take is kept, with your entry.',
    fetch: (megabytes: string): string => `Fetch ${megabytes} MB`,
    fetching: 'Fetching the meter reader',
    opening: 'Starting the meter reader',
  },
  fetchFaults: {
    offline: 'The meter reader could not be fetched. What came is kept. Try again where there is a network; until then, key the number.',
    full: 'This phone has no room for the meter reader. Nothing recorded is touched. Free some room, or key the number.',
  },
  aim: 'Put the figures into the box. A little too large is fine.',
  guide: 'Guide box. Drag it over the figures; arrow keys move it.',
  corner: 'Size of the guide box. Drag; arrow keys change it.',
  certain: 'certain',
  check: 'please check',
  cutOut: 'What the camera read, cut out of the picture',
  doubtfulAt: (at: number): string => `Look at the ${ordinal(at)} place.`,
  take: (text: string): string => `Take ${text}`,
  takeNothing: 'Nothing read yet',
  keeping: 'Keeping the picture',
  library: 'Picture from the library',
  live: 'Back to the camera',
  readStill: 'Read this picture',
  again: 'Try again',
  torch: {
    on: 'Lamp on',
    off: 'Lamp off',
    title: 'Is every film covered?',
    fogs: 'The lamp is white light. It fogs open film, and a leak at a magazine or a lid.',
    panchromatic: 'This machine runs panchromatic stock: no light at all may reach it. Not in the loading room, not at an open lid.',
    sure: 'All film is covered: lamp on',
    not: 'Leave it off',
    failed: 'The lamp does not answer. Use the room’s light, or key the number.',
  },
  doubts: {
    passesDiffer: 'It came out differently on a second look.',
    unsure: 'A figure is not clear.',
    segmentsDiffer: 'The bars look like another figure.',
    outOfRange: 'The instrument cannot show this.',
    wrongDecimals: 'The decimals are not those of this instrument. A point lost?',
    unlikeRecent: 'It is far from the recent readings.',
  } satisfies Record<Doubt['why'], string>,
  refusals: {
    boxOutside: 'The box is too small, or beside the picture. Put it over the figures.',
    pictureTooLarge: 'The picture has more than 50 megapixels, too many for a phone. Take it smaller.',
    tooDark: 'Too dark. More light on the display, or the lamp where all film is covered.',
    empty: 'Nothing stands in the box. Put it over the figures.',
    blurred: 'Not sharp. Hold still, a little further off.',
    noFigures: 'No number found in the box. Put only the figures into it.',
  } satisfies Record<ReadingRefusal, string>,
  faults: {
    denied: 'The camera is not allowed for this app. Allow it in the browser’s settings for this site, take a picture from the library, or key the number.',
    none: 'This phone has no camera that the app can use. Take a picture from the library, or key the number.',
    busy: 'Another app holds the camera. Close that one and try again, or key the number.',
    notHere: 'The browser gives this page no camera (it needs https). Take a picture from the library, or key the number.',
  } satisfies Record<CameraFault, string>,
  stillFaults: {
    notAPicture: 'This file is no picture that the phone can open. Choose another, or key the number.',
    tooLarge: 'The picture has more than 50 megapixels, too many for a phone. Choose a smaller one, or key the number.',
  } satisfies Record<StillFault, string>,
  readerFaults: {
    fileMissing: 'A part of the meter reader is not on this phone. Try again where there is a network, or key the number.',
    fileDamaged: 'A part of the meter reader is damaged and is not used. Fetch it again where there is a network, or key the number.',
    foreignOrigin: 'A part of the meter reader would come from another site and is not used. Tell the supervisor; key the number.',
    startFailed: 'The meter reader does not start on this phone. Key the number.',
    startTimedOut: 'The meter reader took too long to start. Close other apps and try again, or key the number.',
    passTimedOut: 'Reading took too long and was stopped. Try again, or key the number.',
    closed: 'The meter reader was put away to save memory. Try again.',
    fault: 'Reading failed. Nothing recorded is touched. Try again, or key the number.',
    photo: 'The picture could not be kept, so nothing was taken. Try again, or key the number.',
  } satisfies Record<ReaderFaultCode | 'fault' | 'photo', string>,
  mended: (text: string): string => `The camera read ${text}; you mended it. The entry says so.`,
}
