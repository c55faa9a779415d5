import { useEffect, useState } from 'preact/hooks'
import { useWords } from '../app-context.ts'
import { BareScreen } from '../enrol/bare-screen.tsx'
import { Banner } from '../parts/banner.tsx'
import { LinkButton } from '../parts/button.tsx'
import { Card } from '../parts/card.tsx'
import { Capabilities } from './phone-page.tsx'
import './menu.css'

/** What a phone needs before it can be a device of the laboratory, and what this one lacks. Open to anybody, before enrolment. */
export const SetupPage = () => {
  const words = useWords().menu.setup
  const [hasAuthority, setHasAuthority] = useState(false)
  useEffect(() => {
    fetch('/ca.pem', { method: 'HEAD' }).then(
      (answer) => setHasAuthority(answer.ok),
      () => setHasAuthority(false),
    )
  }, [])
  return (
    <BareScreen title={words.title} next={isSecureContext ? <LinkButton kind="go" href="/now">{words.onward}</LinkButton> : null}>
      {isSecureContext ? null : (
        <>
          <Banner kind="stop" title={words.insecure}><p>{words.insecureMore}</p></Banner>
          <Card title={words.stepsTitle}>
            {hasAuthority ? (
              <>
                <ol class="steps">{words.steps.map((step) => <li key={step}>{step}</li>)}</ol>
                <LinkButton wide href="/ca.pem" newWindow>{words.certificate}</LinkButton>
              </>
            ) : <p>{words.noCertificate}</p>}
          </Card>
        </>
      )}
      <Card title={words.homeTitle}>
        <ul class="steps">{words.home.map((step) => <li key={step}>{step}</li>)}</ul>
      </Card>
      <Capabilities />
    </BareScreen>
  )
}
