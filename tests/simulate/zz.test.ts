import { it } from 'vitest'
import { shifts, summary, tanks } from './baths.ts'
it('x', () => {
  for (const tank of tanks) for (const lot of ['right','halfStrength','doubleStrength','water'] as const) for (const policy of ['stagedAndLearned','singleFullDoses'] as const) {
    const t = Date.now()
    const runs = shifts(tank, policy, { runs: lot==='right'?60:20, lot })
    console.log(tank.name, lot, policy, JSON.stringify(summary(runs)), Date.now()-t,'ms', runs.filter(r=>r.excursions.some(e=>e.portions===undefined||e.portions>3)).slice(0,2).map(r=>JSON.stringify(r)).join('\n'))
  }
}, 600000)
