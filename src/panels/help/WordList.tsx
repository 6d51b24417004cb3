import { type ReactElement, useId, useState } from 'react'
import { foundTerms, termOf, type TermId } from '../../domain/layout/wording/terms'
import { TermBody } from './TermCard'

const Word = (props: { readonly id: TermId }): ReactElement => {
  const [isOpen, setOpen] = useState(false)
  return (
    <li>
      <details open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          <strong>{termOf(props.id).word}</strong>
        </summary>
        {/* A drawing for each of fifty words is made when it is looked at. */}
        {isOpen ? <TermBody term={props.id} /> : null}
      </details>
    </li>
  )
}

/** Every explained word from A to Z, and those that hold what is searched for. */
export const WordList = (): ReactElement => {
  const id = useId()
  const [search, setSearch] = useState('')
  const found = foundTerms(search)
  return (
    <>
      <div className="word-search no-print">
        <label htmlFor={id}>Find a word</label>
        <input id={id} type="search" value={search} onChange={(event) => setSearch(event.target.value)} />
      </div>
      <p className="hint" role="status">
        {found.length === 0
          ? `No word has “${search.trim()}” in it or in its explanation.`
          : `${found.length} ${found.length === 1 ? 'word' : 'words'}`}
      </p>
      <ul className="word-list">
        {found.map((term) => (
          <Word key={term} id={term} />
        ))}
      </ul>
    </>
  )
}
