import { describe, expect, it } from 'vitest'
import { killTrials } from '../server/kill.ts'

describe('the server, killed two hundred times while phones send', () => {
  it('loses nothing that it has acknowledged and keeps nothing twice', async () => {
    const { acknowledged, lost, twice, unacknowledged } = await killTrials(200)
    console.log(`${acknowledged} entries acknowledged over 200 kills, ${lost} lost, ${twice} twice; ${unacknowledged} had been stored without an answer`)
    expect(acknowledged).toBeGreaterThan(200)
    expect({ lost, twice }).toEqual({ lost: 0, twice: 0 })
  })
})
