import type { LinkView } from '@/lib/use-cases/links/see-by-link'
import { Question } from './question'
import styles from './question.module.css'

/** What was found beyond the order: what waits for the customer's yes or no first, then what was answered. */
export function Questions({ view, token }: { view: LinkView; token: string }) {
  if (view.questions.length === 0) return null
  return (
    <section className="stack part" aria-label="Questions for you">
      <h2>{titleOf(view.questions.filter(({ answered }) => answered === null).length)}</h2>
      <ul className={`plain-list ${styles.questions}`}>
        {view.questions.map((question) => (
          <li key={question.id}>
            <Question question={question} token={token} call={view.shop.lines.at(-1) ?? view.shop.name} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function titleOf(open: number): string {
  if (open === 0) return 'What we asked you'
  return open === 1 ? 'We have a question for you' : `We have ${open} questions for you`
}
