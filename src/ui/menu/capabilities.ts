import { hasSimd } from '../../device/simd.ts'
import { isInstalled } from '../installed.ts'

/** What the app needs of a phone, in the order of weight. Each has a name and, where it lacks, what follows from that. */
export type Capability =
  | 'secure' | 'serviceWorker' | 'store' | 'persisted' | 'installed' | 'locks' | 'camera' | 'lamp' | 'labels' | 'simd' | 'vibration' | 'wakeLock' | 'backgroundSync' | 'notices' | 'badge'

/** Asks the browser, not its name. */
export const capabilities = async (): Promise<{ capability: Capability; has: boolean }[]> => {
  const registration = await navigator.serviceWorker?.getRegistration().catch(() => undefined)
  const persisted = (await navigator.storage?.persisted?.().catch(() => false)) ?? false
  const has: Record<Capability, boolean> = {
    secure: isSecureContext,
    serviceWorker: registration !== undefined,
    store: typeof indexedDB !== 'undefined',
    persisted,
    installed: isInstalled(),
    locks: navigator.locks !== undefined,
    camera: navigator.mediaDevices?.getUserMedia !== undefined,
    lamp: (navigator.mediaDevices?.getSupportedConstraints?.() as { torch?: boolean } | undefined)?.torch === true,
    labels: 'BarcodeDetector' in globalThis,
    simd: hasSimd(),
    vibration: typeof navigator.vibrate === 'function',
    wakeLock: 'wakeLock' in navigator,
    backgroundSync: registration !== undefined && 'sync' in registration,
    notices: 'Notification' in globalThis && Notification.permission === 'granted',
    badge: 'setAppBadge' in navigator,
  }
  return (Object.keys(has) as Capability[]).map((capability) => ({ capability, has: has[capability] }))
}
