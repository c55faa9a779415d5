import { useState } from 'preact/hooks'
import { addOf, type Poured } from '../../corrections/add-entry.ts'
import type { RevealAsked, Revealed } from '../../corrections/sealed-dose.ts'
import type { PersonId } from '../../plan/ids.ts'
import { personOf } from '../../plan/find.ts'
import { cardOf } from '../../safety/own-cards.ts'
import { useApp, useWords } from '../app-context.ts'
import { buzz } from '../buzz.ts'
import { decimalsOf, numberText } from '../format.ts'
import { lazy } from '../lazy.tsx'
import { materialName } from '../material-name.ts'
import { Banner } from '../parts/banner.tsx'
import { Button } from '../parts/button.tsx'
import { Card, Row, Rows } from '../parts/card.tsx'
import { Sheet } from '../parts/sheet.tsx'
import { Deferral } from '../safety/deferral.tsx'
import { SavingProblem } from '../saving-problem.tsx'
import { useSaving } from '../saving.ts'
import { Screen } from '../screen.tsx'
import { AloneSheet } from './alone-sheet.tsx'
import { shownAmount } from './amount.ts'
import { CautionCardView } from './caution-card.tsx'
import type { DoseProps } from './dose-flow.tsx'
import { LotSheet } from './lot-sheet.tsx'
import { PouredSheet } from './poured-sheet.tsx'
import { SecondPersonSheet } from './second-person-sheet.tsx'
import { refusalText, sayText } from './sentence.ts'
import { WorkingSheet } from './working-sheet.tsx'

const Nothing = () => null
/** The shelf is counted at the desk: where this cannot be fetched yet, the dose stands all the same. */
const DoseStock = lazy<{ material: string; needed: number }>(() => import('../stock/dose-stock.tsx').then((it) => it.DoseStock, () => Nothing), Nothing)

interface AmountStepProps extends DoseProps {
  asked: RevealAsked
  revealed: Revealed
  onSecond(person: PersonId): void
}

type Open = 'working' | 'lot' | 'second' | 'alone' | 'poured' | 'card'

/** How much, in figures that are read across the tank; how it is poured; and what was poured. */
export const AmountStep = ({ exception, remedy, dose, plan, lots, onLots, reason, stopped, asked, revealed, onSecond }: AmountStepProps) => {
  const { phone, router } = useApp()
  const words = useWords()
  const say = words.exception
  const saving = useSaving()
  const [open, setOpen] = useState<Open>()
  /** Poured before a second person had looked. */
  const [waiting, setWaiting] = useState<{ poured: Poured; why?: string | undefined }>()
  const [problems, setProblems] = useState<readonly string[]>([])
  const shown = shownAmount(revealed.amount, revealed.unit)
  const name = materialName(plan, dose.material, words)
  const lot = lots[dose.material]
  const check = plan.checks.find(({ id }) => id === exception.check)
  const decimals = check?.kind === 'reading' ? decimalsOf(check.step) : 2
  const whole = revealed.wholeAmount !== undefined && dose.staged ? shownAmount(revealed.wholeAmount, revealed.unit) : undefined

  const pour = async (poured: Poured, overruled?: string, pouredAlone = false): Promise<void> => {
    const made = addOf(remedy, { ...asked, now: phone.clock.now(), poured, lot, overruled: [reason, overruled].filter((it) => it?.trim()).join('. ') || undefined, pouredAlone })
    if (!made.ok) {
      setProblems(made.problems.map((it) => sayText(it, plan, words)))
      buzz('refused')
      if (made.problems.some(({ code }) => code === 'secondPersonNeeded')) {
        setWaiting({ poured, why: overruled })
        setOpen('second')
      }
      return
    }
    const saved = await saving.save('add', made.data)
    if (!saved) return
    buzz('saved')
    router.go(`/exception/${exception.id}`, 'replace')
  }
  return (
    <Screen
      title={sayText(remedy.says, plan, words)}
      back
      next={
        <>
          <Button kind="go" notYet={saving.busy ? words.shell.loading : undefined} onPress={() => void pour({ amount: shown.amount, unit: shown.unit, keyed: shown.text })}>{say.pouredButton(`${shown.text} ${shown.unit}`)}</Button>
          <Button wide onPress={() => setOpen('poured')}>{say.pouredOther}</Button>
        </>
      }
    >
      {stopped ? <Banner kind="stop" title={stopped === 'notOffered' ? say.notOfferedNow : refusalText(stopped, plan, words)}>{stopped === 'notOffered' ? say.stoppedMore : `${sayText(stopped.doFirst, plan, words)} ${say.stoppedMore}`}</Banner> : null}
      <Card title={say.addNow} beside={dose.staged ? say.portion(dose.portion) : undefined}>
        <p class="amount"><strong>{shown.text}</strong> {shown.unit}</p>
        <p class="lead">{name}</p>
        {whole ? <p class="small quiet">{say.ofWhole(`${whole.text} ${whole.unit}`)}</p> : null}
        {dose.cappedBy ? <p class="small quiet">{say.capped[dose.cappedBy]}</p> : null}
        {revealed.scaledUp ? <p class="flagged">{say.scaledUp}</p> : null}
        {reason ? <p class="small quiet">{say.ownReason(reason)}</p> : null}
      </Card>
      <DoseStock material={dose.material} needed={revealed.amount * (revealed.unit === 'L' || revealed.unit === 'kg' ? 1000 : 1)} />
      {problems.length ? <Banner kind="stop" title={problems.join(' ')} /> : null}
      <SavingProblem of={saving} />
      <ol class="how">{remedy.how.map((it) => <li key={it.code}>{sayText(it, plan, words)}</li>)}</ol>
      <Card>
        <Rows>
          {dose.predicted ? <Row what={say.predicted} value={`${numberText(dose.predicted.from, decimals)} → ${numberText(dose.predicted.to, decimals)}`} under={dose.response.learnedFrom ? say.response(numberText(dose.response.factor, 2), dose.response.learnedFrom) : undefined} /> : null}
          {dose.material === 'water' ? null : <Row what={words.response.link} href={`/response/${exception.station}/${dose.material}`} />}
          {remedy.wait ? <Row what={say.thenMix} value={words.time.span(remedy.wait.seconds * 1000)} under={say.turnovers(remedy.wait.turnovers)} /> : null}
          {dose.rechecks > 1 ? <Row what={say.readTwice} under={say.readTwiceWhy} /> : null}
          {dose.material === 'water' ? null : <Row what={say.lot} value={lot ?? say.lotNone} onPress={() => setOpen('lot')} />}
          {dose.secondPerson.required || dose.secondPerson.offersScaledUp ? (
            <Row
              what={say.secondPerson}
              under={dose.secondPerson.required ? say.secondRequired : say.secondOffers}
              value={asked.secondPerson ? personOf(plan, asked.secondPerson)?.name : say.secondNone}
              onPress={() => setOpen('second')}
            />
          ) : null}
          {revealed.working ? <Row what={say.showWorking} onPress={() => setOpen('working')} /> : null}
          {dose.cards.length ? <Row what={say.readCautionAgain} onPress={() => setOpen('card')} /> : null}
        </Rows>
      </Card>
      {open === 'working' && revealed.working ? <WorkingSheet working={revealed.working} onClose={() => setOpen(undefined)} /> : null}
      {open === 'lot' ? <LotSheet material={dose.material} lot={lot} onLot={(next) => { onLots({ ...lots, [dose.material]: next }); setOpen(undefined) }} onClose={() => setOpen(undefined)} /> : null}
      {open === 'second' ? <SecondPersonSheet plan={plan} onPerson={(person) => { onSecond(person); setProblems([]); setOpen(undefined) }} {...(waiting ? { onAlone: () => setOpen('alone') } : {})} onClose={() => setOpen(undefined)} /> : null}
      {open === 'alone' && waiting ? <AloneSheet amount={`${waiting.poured.keyed} ${waiting.poured.unit}`} onWhy={(why) => { setOpen(undefined); void pour(waiting.poured, [waiting.why, why].filter(Boolean).join('. '), true) }} onClose={() => setOpen(undefined)} /> : null}
      {open === 'poured' ? <PouredSheet shown={shown} onPoured={(poured, why) => { setOpen(undefined); void pour(poured, why) }} onClose={() => setOpen(undefined)} /> : null}
      {open === 'card' ? (
        <Sheet title={words.safety.before} closeName={words.shell.close} onClose={() => setOpen(undefined)}>
          {dose.cards.map((id) => {
            const card = cardOf(plan, id)
            return card ? <CautionCardView key={id} card={card} /> : null
          })}
          <Deferral underCard />
        </Sheet>
      ) : null}
    </Screen>
  )
}
