import { useEffect, useState, type ReactElement } from 'react'
import { exampleList, openExample, type ExampleEntry } from '../../state/files'
import { useAppStore } from '../../state/react'

type ExamplesState = readonly ExampleEntry[] | 'loading' | 'missing'

const ExampleChoices = (props: { readonly examples: readonly ExampleEntry[] }): ReactElement => {
  const store = useAppStore()
  return (
    <ul className="menu-list example-list">
      {props.examples.map((example) => (
        <li key={example.file}>
          <button type="button" onClick={() => void openExample(store, example)}>
            <strong>{example.title}</strong>
            <small>{example.about}</small>
          </button>
        </li>
      ))}
    </ul>
  )
}

/** Made-up cars that come with the app; each opens as a layout of its own. */
export const Examples = (): ReactElement => {
  const [examples, setExamples] = useState<ExamplesState>('loading')
  const [attempt, setAttempt] = useState(0)
  useEffect(() => {
    let isWanted = true
    void exampleList().then((list) => {
      if (isWanted) setExamples(list ?? 'missing')
    })
    return () => {
      isWanted = false
    }
  }, [attempt])
  return (
    <section aria-labelledby="examples-title" className="layout-examples">
      <h3 id="examples-title">Examples</h3>
      {examples === 'loading' ? <p className="hint">Loading the list of examples…</p> : null}
      {examples === 'missing' ? (
        <p className="hint">
          The examples could not be loaded.{' '}
          <button
            type="button"
            onClick={() => {
              setExamples('loading')
              setAttempt(attempt + 1)
            }}
          >
            Try again
          </button>
        </p>
      ) : null}
      {typeof examples === 'string' ? null : <ExampleChoices examples={examples} />}
    </section>
  )
}
