import { useState, type ReactElement } from 'react'
import {
  drawnVariantName,
  MOST_VARIANTS,
  variantsOf,
  withVariantAdded,
} from '../../domain/layout/edit/changeVariants'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { pickedText } from '../../state/pickedFile'
import { useActions, useApp, useAppStore } from '../../state/react'
import { FileButton } from '../FileButton'
import { takeVariantFrom } from './takenLayout'

/** Larger than any real layout by far; our judgement. */
const LARGEST_FILE_BYTES = 5_000_000

type KeptLayout = NonNullable<Awaited<ReturnType<typeof pageKeeping.list>>>[number]

type Kept = readonly KeptLayout[] | 'closed' | 'loading' | 'missing'

const keptName = ({ jobName }: KeptLayout): string => (jobName === '' ? 'Unnamed layout' : jobName)

const keptDate = ({ savedAtMs }: KeptLayout): string =>
  savedAtMs === 0 ? '' : new Date(savedAtMs).toLocaleString()

const KeptChoices = (props: {
  readonly kept: Exclude<Kept, 'closed'>
  readonly onDone: () => void
}): ReactElement => {
  const store = useAppStore()
  const { kept } = props
  if (kept === 'loading') return <p className="hint">Looking up what is kept on this device…</p>
  if (kept === 'missing')
    return (
      <p className="hint">The browser does not say what it keeps. Take the variant from a file instead.</p>
    )
  const others = kept.filter(({ isOpenHere, removedAtMs }) => !isOpenHere && removedAtMs === null)
  if (others.length === 0) return <p className="hint">No other layout is kept on this device yet.</p>
  return (
    <ul className="menu-list compare-kept">
      {others.map((layout) => (
        <li key={layout.id}>
          <button
            type="button"
            onClick={() => {
              if (takeVariantFrom(store, layout.text, keptName(layout))) props.onDone()
            }}
          >
            <strong>{keptName(layout)}</strong>
            <small>{keptDate(layout)}</small>
          </button>
        </li>
      ))}
    </ul>
  )
}

/** The ways to one more variant: a copy of the drawn one, or what another layout builds. */
export const MakeVariant = (): ReactElement => {
  const store = useAppStore()
  const { edit } = useActions()
  const layout = useApp((state) => state.layout)
  const [kept, setKept] = useState<Kept>('closed')
  const isFull = variantsOf(layout).length >= MOST_VARIANTS
  const drawn = drawnVariantName(layout)
  if (isFull)
    return (
      <p className="hint">
        A layout holds at most {MOST_VARIANTS} variants. Remove one to make room for another.
      </p>
    )
  return (
    <div className="compare-make">
      <div className="button-row">
        <button
          type="button"
          className="primary"
          onClick={() =>
            edit(`Make a variant, a copy of ${drawn === '' ? 'what is drawn' : drawn}`, (now) =>
              withVariantAdded(now),
            )
          }
        >
          Make a variant of {drawn === '' ? 'this one' : drawn}
        </button>
        <FileButton
          words="Take one from a file…"
          label="Layout file to take a variant from"
          testId="variant-file"
          onPick={async (file) => {
            const text = await pickedText(store, file, { what: 'a layout', largestBytes: LARGEST_FILE_BYTES })
            if (text !== null) takeVariantFrom(store, text, file.name)
          }}
        />
        <button
          type="button"
          aria-expanded={kept !== 'closed'}
          onClick={() => {
            if (kept !== 'closed') return setKept('closed')
            setKept('loading')
            void pageKeeping.list().then((list) => setKept(list ?? 'missing'))
          }}
        >
          Take one from another kept layout…
        </button>
      </div>
      {kept === 'closed' ? null : <KeptChoices kept={kept} onDone={() => setKept('closed')} />}
    </div>
  )
}
