import { cutOuts } from '../../src/reader/cut-outs.ts'
import { growBox, clampBox } from '../../src/reader/picture.ts'
import { scene } from './scene.ts'
let t=0,u=0,n=0
for (let i = 0; i < 120; i++) {
  const t0 = performance.now(); const s = await scene(1000 + i); const t1 = performance.now(); const box = clampBox(growBox(s.box, 0.25), s.pixels)!; cutOuts(s.pixels, box)
  if (i>=40) { t += t1-t0; u += performance.now()-t1; n++ }
}
console.log(t/n,u/n)
