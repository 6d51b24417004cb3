import './customer.css'
import { type ReactElement, useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { drawnVariantId } from '../../domain/layout/edit/changeVariants'
import { useApp, useKept } from '../../state/react'
import { arrivedAnswer } from '../../state/talk/arrivedAnswer'
import { ScreenFrame } from '../ScreenFrame'
import type { Conversation } from './conversation'
import { CustomerView } from './CustomerView'
import { ShowForm } from './ShowForm'
import { TakeAnswer } from './TakeAnswer'
import { TalkHistory, TalkState } from './TalkHistory'
import { useShopTalk } from './useShopTalk'

/** What the shop does before and after the talk; folded away while there is nothing to do, so that the customer sees the car first. */
const ForTheShop = (props: { readonly talk: Conversation }): ReactElement => {
  const { shown, undecidable } = props.talk
  const { answer } = useKept(arrivedAnswer)
  // Open at first where it has to be shown, or shown again.
  const [isOpen, setOpen] = useState(undecidable !== null)
  // What comes next stands first: showing it, or an answer that waits.
  const parts = [<ShowForm key="show" shown={shown} />, <TakeAnswer key="answer" />]
  return (
    <details
      className="for-the-shop no-print"
      open={isOpen || answer !== null}
      onToggle={({ currentTarget }) => setOpen(currentTarget.open)}
    >
      <summary>For the shop: show, send, take an answer, history</summary>
      <div className="customer-screen">
        {answer === null ? parts : parts.toReversed()}
        <TalkHistory />
      </div>
    </details>
  )
}

const Content = (): ReactElement => {
  const talk = useShopTalk()
  const drawnId = useApp((state) => drawnVariantId(state.layout))
  return (
    <div className="customer-screen">
      <TalkState />
      <ForTheShop talk={talk} />
      <CustomerView talk={talk} firstId={drawnId} />
    </div>
  )
}

let count = 0
const keys = new WeakMap<Layout, number>()

/** A number of its own for every document, by the layout that it began with; edits, undo and a move to another slot keep it. */
const documentKey = (begun: Layout): number => {
  const known = keys.get(begun)
  if (known !== undefined) return known
  count += 1
  keys.set(begun, count)
  return count
}

/** To talk a proposal over with the customer at the builder's own tablet, to send it, and to take what comes back. */
export const CustomerScreen = (): ReactElement => {
  const begun = useApp(({ history }) => history.past[0]?.document ?? history.present)
  return (
    <ScreenFrame title="Customer">
      {/* What is typed about one car never reaches another. */}
      <Content key={documentKey(begun)} />
    </ScreenFrame>
  )
}
