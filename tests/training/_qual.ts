import { cutOuts } from '../../src/reader/cut-outs.ts'
import { growBox, clampBox, type Pixels } from '../../src/reader/picture.ts'
import { sharpnessOf } from '../../src/reader/quality.ts'
import { setScene } from './evaluate.ts'
import { seededRandom } from './random.ts'
const rows: {c:number,b:number,s:number,seed:number}[] = []
for (let i = 0; i < 140; i++) { const s = await setScene(500000, i); const k = cutOuts(s.pixels, clampBox(growBox(s.box, .25), s.pixels)!); rows.push({c:k.contrast,b:k.brightness,s:sharpnessOf(k.ink),seed:s.seed}) }
for (const key of ['c','b','s'] as const) { const v = rows.map(r => r[key]).sort((a,b)=>a-b); console.log(key, [0,1,2,3,7,14,35,70,105,139].map(i => v[i]!.toFixed(3)).join(' ')) }
const rnd = seededRandom(5)
const flat = (level: number, noise: number, ramp = 0): Pixels => { const data = new Uint8ClampedArray(480*360*4); for (let i=0;i<480*360;i++) for (let p=0;p<4;p++) data[i*4+p] = p===3?255: level + ramp*(i%480)/480 + (rnd.unit()-.5)*2*noise; return { width:480,height:360,data } }
for (const [n, p] of Object.entries({ black: flat(0,2), dark: flat(4,4), grey: flat(128,3), ramp: flat(90,4,80), white: flat(250,8), noisy: flat(128, 20) })) { const k = cutOuts(p, { x: 100, y: 100, width: 250, height: 110 }); console.log(n, k.contrast.toFixed(2), k.brightness.toFixed(1), sharpnessOf(k.ink).toFixed(3)) }
// blurred: box-blur the scene heavily
const blur = (p: Pixels, r: number): Pixels => { let d = Float32Array.from(p.data); const w=p.width,h=p.height; for (let pass=0;pass<2;pass++){ const o = new Float32Array(d.length); for (let y=0;y<h;y++) for (let x=0;x<w;x++) for (let c=0;c<3;c++){ let s=0,n=0; for (let k=-r;k<=r;k++){ const xx=x+k; if(xx>=0&&xx<w){s+=d[(y*w+xx)*4+c]!;n++} } o[(y*w+x)*4+c]=s/n } const q=new Float32Array(d.length); for (let y=0;y<h;y++) for (let x=0;x<w;x++) for (let c=0;c<3;c++){ let s=0,n=0; for (let k=-r;k<=r;k++){ const yy=y+k; if(yy>=0&&yy<h){s+=o[(yy*w+x)*4+c]!;n++} } q[(y*w+x)*4+c]=s/n } d=q } return {width:w,height:h,data:Uint8ClampedArray.from(d)} }
for (let i = 0; i < 8; i++) { const s = await setScene(500000, i*3); const fh = s.box.height; const out=[]; for (const share of [0.05,0.1,0.15,0.25]) { const k = cutOuts(blur(s.pixels, Math.max(1,Math.round(fh*share))), clampBox(growBox(s.box, .25), s.pixels)!); out.push(`${k.contrast.toFixed(1)}/${sharpnessOf(k.ink).toFixed(3)}`) } console.log(s.style, fh.toFixed(0), out.join('  ')) }
