import { createCanvas } from '@napi-rs/canvas'
import { writeFileSync } from 'node:fs'
import { cutOuts } from '../../src/reader/cut-outs.ts'
import { growBox, clampBox } from '../../src/reader/picture.ts'
import { setScene } from './evaluate.ts'
import { scene } from './scene.ts'
const list = process.argv[3] ? process.argv[3].split(',').map(Number) : null
const base = Number(process.argv[2] ?? 1)
const c = createCanvas(1500, 1500); const x = c.getContext('2d'); x.fillStyle = '#446'; x.fillRect(0, 0, 1500, 1500)
let t = 0, u = 0
for (let i = 0; i < (list?.length ?? 20); i++) {
  const t0 = performance.now(); const s = list ? await setScene(500000, list[i]!) : await scene(base + i); t += performance.now() - t0
  const t1 = performance.now(); const box = clampBox(growBox(s.box, 0.25), s.pixels)!; const cut = cutOuts(s.pixels, box); u += performance.now() - t1
  const X = (i % 4) * 375, Y = Math.floor(i / 4) * 300
  const m = createCanvas(s.pixels.width, s.pixels.height); const mc = m.getContext('2d'); const im = mc.createImageData(s.pixels.width, s.pixels.height); im.data.set(s.pixels.data); mc.putImageData(im, 0, 0)
  mc.strokeStyle = 'lime'; mc.strokeRect(box.x, box.y, box.width, box.height)
  x.drawImage(m, X, Y, 220, 165)
  let yy = Y
  for (const l of [cut.lines.band, cut.lines.level, cut.lines.raw]) {
    const g = createCanvas(l.width, l.height); const gc = g.getContext('2d'); const gi = gc.createImageData(l.width, l.height)
    for (let k = 0; k < l.data.length; k++) { gi.data[4*k] = gi.data[4*k+1] = gi.data[4*k+2] = l.data[k]!; gi.data[4*k+3] = 255 }
    gc.putImageData(gi, 0, 0)
    if (l === cut.lines.band) x.drawImage(g, X, Y + 168, Math.min(370, l.width), 48)
    else { x.drawImage(g, X + (l===cut.lines.raw?186:0), Y + 220, Math.min(184, l.width * 0.9), 44) }
    yy += 45
  }
  x.font = '16px Arimo'; x.fillStyle = '#fff'; x.fillText(`${s.text} ${s.style}${cut.band ? '' : ' NOBAND'}`, X + 224, Y + 20)
}
console.log('scene ms', t / 20, 'cut ms', u / 20)
writeFileSync('/tmp/sheet.png', c.toBuffer('image/png'))
