import { cutOuts } from '../../src/reader/cut-outs.ts'
import { growBox, clampBox } from '../../src/reader/picture.ts'
import { readSegments } from '../../src/reader/segments.ts'
import { scene } from './scene.ts'
import { styles } from './styles.ts'
let ms=0
const tally: Record<string,number[]> = {}
const wrong: string[] = []
for (let i = 0; i < Number(process.argv[2] ?? 140); i++) {
  const style = styles[i % 7]!
  const s = await scene(60000 + i, { style }); const box = clampBox(growBox(s.box, 0.25), s.pixels)!; const cut = cutOuts(s.pixels, box)
  const t=performance.now(); const r = cut.band ? readSegments(cut.level, cut.band) : null; ms+=performance.now()-t
  const row = tally[style] ??= [0,0,0,0,0]
  row[0]!++; if (!r) row[1]!++; else if (r.text === s.text) row[2]!++; else { row[3]!++; if (r.margin>0.3) row[4]!++; wrong.push(`${s.seed} ${style} ${s.text} → ${r.text} ${r.margin.toFixed(2)}`) }
}
console.log('n none right wrong wrong>.3'); console.table(tally); console.log(wrong.slice(0,40).join('\n'), ms/140)
