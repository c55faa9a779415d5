import { openTerminalReader } from '../../src/terminal/reader-engine.ts'
import { evaluate, scores, seeds } from './evaluate.ts'
const [model, count, set] = process.argv.slice(2)
const recognise = await openTerminalReader(model)
const all = await evaluate(recognise, seeds[(set ?? 'validation') as 'validation'], Number(count), () => performance.now())
console.table(scores(all))
for (const cut of [0,1,2]) console.log(['band','level','raw'][cut], (all.filter(e => e.reading.passes[cut]?.text === e.scene.text).length / all.length).toFixed(4))
console.log('ms', all.reduce((t, e) => t + e.milliseconds, 0) / all.length)
for (const e of all) if (e.reading.text !== e.scene.text) console.log(e.scene.seed, e.scene.style, e.scene.heldOut ? 'H' : '', e.scene.text, '→', e.reading.text, e.reading.refusal ?? '', e.reading.certain ? 'CERTAIN' : '', e.reading.passes.map(p => p.text + ' ' + p.confidence.toFixed(2)).join(' | '))
