import type { ReactElement } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import { sittingName } from '../../domain/layout/wording/names'
import { useActions } from '../../state/react'
import { ChoiceField } from '../fields/ChoiceField'
import type { SittingColumn } from './sittingTable'

const choiceWords = ({ sitting, counts }: SittingColumn, layout: Layout): string =>
  counts.broken === 0
    ? sittingName(sitting, layout)
    : `${sittingName(sitting, layout)}: worst of ${counts.broken} broken`

/** Which sitting the one column shows, on a screen too narrow for more; also by steps. */
export const SittingChooser = (props: {
  readonly columns: readonly SittingColumn[]
  readonly shownId: string
  readonly layout: Layout
}): ReactElement => {
  const { columns, shownId, layout } = props
  const { selectSitting } = useActions()
  const index = columns.findIndex(({ sitting }) => sitting.id === shownId)
  const before = columns[index - 1]
  const after = columns[index + 1]
  return (
    <div className="sitting-chooser">
      <ChoiceField
        label="Sitting in the column"
        value={shownId}
        choices={columns.map((column) => ({
          value: column.sitting.id,
          words: choiceWords(column, layout),
        }))}
        testId="sitting-column-choice"
        onChange={selectSitting}
      />
      <div className="button-pair">
        <button
          type="button"
          disabled={before === undefined}
          onClick={() => before && selectSitting(before.sitting.id)}
        >
          Previous
        </button>
        <button
          type="button"
          disabled={after === undefined}
          onClick={() => after && selectSitting(after.sitting.id)}
        >
          Next
        </button>
      </div>
    </div>
  )
}
