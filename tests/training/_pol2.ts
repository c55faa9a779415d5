import { inkOf } from '/work/main/src/reader/contrast.ts'
import { crop } from '/work/main/src/reader/crop.ts'
import { softMean, boxMean } from '/work/main/src/reader/blur.ts'
import { growBox, clampBox, type Field } from '/work/main/src/reader/picture.ts'
import { setScene } from '/work/main/tests/training/evaluate.ts'
const run1 = (src: Float32Array, n: number, stride: number, base: number, r: number, out: Float32Array, max: boolean) => {
  for (let i = 0; i < n; i++) { let v = max ? -1e9 : 1e9; for (let k = Math.max(0, i - r); k <= Math.min(n - 1, i + r); k++) { const s = src[base + k * stride]!; if (max ? s > v : s < v) v = s } out[base + i * stride] = v }
}
const morph = (f: Field, r: number, max: boolean): Field => { const a = new Float32Array(f.data.length), b = new Float32Array(f.data.length); for (let y = 0; y < f.height; y++) run1(f.data, f.width, 1, y * f.width, r, a, max); for (let x = 0; x < f.width; x++) run1(a, f.height, f.width, x, r, b, max); return { ...f, data: b } }
const n = Number(process.argv[2] ?? 280)
const tally: Record<string, number> = {}; const bad: Record<string, string[]> = {}
for (let i = 0; i < n; i++) {
  const s = await setScene(500000, i); const pl = crop(s.pixels, clampBox(growBox(s.box, .25), s.pixels)!); const { ink, plain } = inkOf(pl)
  const g = pl.green; const lum = { ...g, data: g.data.map((v, k) => v + pl.red.data[k]! + pl.blue.data[k]!) }; const low = softMean(lum, Math.round(g.height * .3))
  let c = 0; for (let k = 0; k < lum.data.length; k++) c += (lum.data[k]! - low.data[k]!) * ink.data[k]!
  const right = (c < 0) === s.inkIsDarker // sign currently right
  const h = ink.height, w = ink.width
  const note = (name: string, score: number) => { const ok = (score > 0) === right; if (!ok) { tally[name] = (tally[name] ?? 0) + 1; (bad[name] ??= []).push(String(i)) } else tally[name] ??= 0 }
  const weights = (y: number, x: number, p: number) => Math.sin(Math.PI * (y + .5) / h) ** p * Math.sin(Math.PI * (x + .5) / w) ** (p > 1 ? .5 : 0)
  const sm = boxMean(ink, 2)
  for (const p of [1, 3]) { let t = 0; for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) t += weights(y, x, p) * sm.data[y * w + x]! ** 3; note('third' + p, t) }
  for (const [nm, src] of [['ink', boxMean(ink, 1)], ['plain', boxMean(plain, 1)]] as const) for (const r of [5, 7, 9]) {
    const open = morph(morph(src, r, false), r, true), close = morph(morph(src, r, true), r, false)
    let white = 0, black = 0
    for (let y = 0; y < h; y++) for (let x = 0; x < w; x++) { const k = y * w + x, q = weights(y, x, 3); white += q * Math.min(4, (src.data[k]! - open.data[k]!)) ** 2; black += q * Math.min(4, (close.data[k]! - src.data[k]!)) ** 2 }
    note(`top-${nm}-${r}`, white - black)
  }
}
console.log(tally); for (const k in bad) console.log(k, bad[k]!.join(' '))
