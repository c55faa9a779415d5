import type { DisplayUnits } from '../../plan/lab-plan.ts'
import { typicalStations } from '../../plan/template/stations.ts'
import { useWords } from '../app-context.ts'
import { Banner } from '../parts/banner.tsx'
import { Card } from '../parts/card.tsx'
import { Field } from '../parts/field.tsx'
import { Select, Tick } from './form.tsx'
import { readMachine, usualOf, type MachineKeyed } from './machine-wanted.ts'
import { useNames } from './use-names.ts'

/** A machine out of typical places: which it has, and what is known of its tanks. */
export const MachineForm = ({ keyed, units, patient, onChange }: { keyed: MachineKeyed; units: DisplayUnits; patient: boolean; onChange(keyed: MachineKeyed): void }) => {
  const words = useWords().plan
  const { bad } = readMachine(keyed, units)
  const say = useNames()
  const set = (change: Partial<MachineKeyed>): void => onChange({ ...keyed, ...change })
  const notNumber = (place: string): string | undefined => (bad.has(place) ? words.first.positive : undefined)
  return (
    <>
      <Card>
        <Field name={words.nameOf('machineName')} value={keyed.name} patient={patient} problem={bad.has('name') ? words.first.needed : undefined} onChange={(name) => set({ name })} />
        <Select
          label={words.nameOf('stock')} value={keyed.stock} options={(['negative', 'positive'] as const).map((it) => ({ value: it, says: words.choice('stock', it) }))}
          // Negative stock is nearly always panchromatic, print stock blue-sensitive: the safer one where nobody has said.
          onChange={(it) => set(it === 'positive' ? { stock: 'positive' } : { stock: 'negative', light: 'panchromatic' })}
        />
        <Select label={words.nameOf('light')} help={words.helpOf('light')} value={keyed.light} options={(['panchromatic', 'orthochromatic', 'blueSensitive'] as const).map((it) => ({ value: it, says: words.choice('light', it) }))} onChange={(it) => set({ light: it as MachineKeyed['light'] })} />
        <Select label={words.nameOf('gauge')} value={String(keyed.gauge)} options={[35, 16, 65, 8].map((it) => ({ value: String(it), says: String(it) }))} onChange={(it) => set({ gauge: Number(it) as MachineKeyed['gauge'] })} />
        <Field name={words.nameOf('aimSpeed')} kind="decimal" unit={`${units.length}/min`} patient={patient} problem={notNumber('speed')} value={keyed.speed} onChange={(speed) => set({ speed })} />
      </Card>
      <Banner kind="warn" title={words.first.starting}><span class="small">{words.startingValuesMore}</span></Banner>
      <Card title={words.lists.stations.title}>
        <p class="small quiet">{words.first.stationsMore}</p>
        {typicalStations.map((station) => {
          const has = keyed.stations.includes(station.as)
          const usual = usualOf(station.as, keyed, units)
          return (
            <div class="first-tank" key={station.as} role="group" aria-label={say(station.name, 'name')}>
              <Tick says={<>{say(station.name, 'name')} <span class="small quiet">{words.counts.checks(station.checks({ stock: keyed.stock, metresPerMinute: 1 }, station.bath?.({ stock: keyed.stock, metresPerMinute: 1 })).length)}</span></>} checked={has} onChange={(on) => set({ stations: typicalStations.map(({ as }) => as).filter((as) => (as === station.as ? on : keyed.stations.includes(as))) })} />
              {has && usual.litres !== undefined ? (
                <div class="pair">
                  <Field name={words.nameOf('litres')} kind="decimal" unit={units.volume} patient={patient} problem={notNumber(`litres.${station.as}`)} value={keyed.litres[station.as] ?? usual.litres} onChange={(text) => set({ litres: { ...keyed.litres, [station.as]: text } })} />
                  <Field name={words.nameOf('path')} kind="decimal" unit={units.length} patient={patient} problem={notNumber(`path.${station.as}`)} value={keyed.path[station.as] ?? usual.path!} onChange={(text) => set({ path: { ...keyed.path, [station.as]: text } })} />
                </div>
              ) : null}
            </div>
          )
        })}
      </Card>
    </>
  )
}
