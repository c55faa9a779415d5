import { useWords } from './app-context.ts'
import { LinkButton } from './parts/button.tsx'
import { Screen } from './screen.tsx'

/** An address that names no screen, or something that the plan does not have any more. */
export const NotFound = ({ back, why }: { back?: boolean; why?: string }) => {
  const words = useWords().shell.notFound
  return (
    <Screen title={words.title} {...(back ? { back } : {})} next={<LinkButton kind="go" href="/now">{words.go}</LinkButton>}>
      <p>{why ?? words.more}</p>
    </Screen>
  )
}
