import { inkOf } from '../../src/reader/contrast.ts'
import { crop } from '../../src/reader/crop.ts'
import { softMean } from '../../src/reader/blur.ts'
import { growBox, clampBox } from '../../src/reader/picture.ts'
import { setScene } from './evaluate.ts'
let wrong = 0; const bad: string[] = []; const n = Number(process.argv[2] ?? 280)
for (let i = 0; i < n; i++) {
  const s = await setScene(500000, i); const pl = crop(s.pixels, clampBox(growBox(s.box, .25), s.pixels)!); const { ink } = inkOf(pl)
  const g = pl.green; const lum = { ...g, data: g.data.map((v, k) => v + pl.red.data[k]! + pl.blue.data[k]!) }; const low = softMean(lum, Math.round(g.height * .3))
  let c = 0; for (let k = 0; k < lum.data.length; k++) c += (lum.data[k]! - low.data[k]!) * ink.data[k]!
  if ((c < 0) !== s.inkIsDarker) { wrong++; bad.push(`${i} ${s.style} ${s.text}`) }
}
console.log('wrong polarity', wrong, 'of', n, bad.join('; '))
