import type { ReactElement } from 'react'
import { pageKeeping } from '../../state/keeping/pageKeeping'
import { useActions, useAppStore, useKept } from '../../state/react'
import { arrival, type ArrivedLayout, settleArrival } from '../../state/share/arrival'
import { LayoutPicture } from '../figure/LayoutPicture'
import { ModalDialog } from './ModalDialog'
import { PictureBoundary } from './PictureBoundary'

const Facts = ({ layout }: ArrivedLayout): ReactElement => {
  const { name, car, customer, revision } = layout.job
  const facts = [
    ['Job', name === '' ? 'Unnamed layout' : name],
    ['Car', car],
    ['Customer', customer],
    ['Revision', revision],
    ['Places', layout.places.map((place) => place.name).join(', ')],
  ] as const
  return (
    <dl className="arrived-facts">
      {facts.map(([fact, words]) =>
        words === '' ? null : (
          <div key={fact}>
            <dt>{fact}</dt>
            <dd>{words}</dd>
          </div>
        ),
      )}
    </dl>
  )
}

const Choices = ({ layout, keptId }: ArrivedLayout): ReactElement => {
  const store = useAppStore()
  const { openLayout, notify, setView } = useActions()
  const name = layout.job.name === '' ? 'Unnamed layout' : layout.job.name
  const open = (): void => {
    settleArrival()
    openLayout(layout, `Open ${name} from a link`)
    setView({ screen: 'drawing', side: 'panels' })
    notify('info', `${name} is open as a layout of its own. What was here before is under Layouts.`)
  }
  const goToKept = async (id: string): Promise<void> => {
    settleArrival()
    if (await pageKeeping.open(store, id)) setView({ screen: 'drawing', side: 'panels' })
  }
  return (
    <div className="button-row">
      {keptId === null ? null : (
        <button type="button" className="primary" onClick={() => void goToKept(keptId)}>
          Go to the one kept here
        </button>
      )}
      <button type="button" className={keptId === null ? 'primary' : undefined} onClick={open}>
        Open as a new layout
      </button>
      <button type="button" onClick={settleArrival}>
        Not now
      </button>
    </div>
  )
}

/** What came in a link is shown first and opened only when the builder says so; nothing that is here is ever written over. */
export const ArrivedLayoutDialog = (): ReactElement | null => {
  const { layout: arrived } = useKept(arrival)
  if (arrived === null) return null
  return (
    <ModalDialog title="A layout came with the link" onClose={settleArrival}>
      <div className="arrived-picture">
        <PictureBoundary>
          <LayoutPicture
            layout={arrived.layout}
            elevation="side"
            description="Side view of the layout in the link"
          />
        </PictureBoundary>
      </div>
      <Facts {...arrived} />
      <p>
        {arrived.keptId === null
          ? 'Opened, it is kept here as a layout of its own. Nothing that is here already is changed.'
          : 'Exactly this layout is kept here already. You can go to it, or open the link as another one beside it.'}
      </p>
      <Choices {...arrived} />
    </ModalDialog>
  )
}
