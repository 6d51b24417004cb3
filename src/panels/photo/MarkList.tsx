import type { ReactElement } from 'react'
import { markWords } from '../../domain/layout/wording/photoWords'
import { type MarkId, markOf, type Photo } from '../../domain/measure/photo/photo'
import type { Crosses } from './useCrosses'

/** Some crosses of the photo: which are put, which is next, and a way to take one in hand. */
export const MarkList = (props: {
  readonly photo: Photo
  readonly ids: readonly MarkId[]
  readonly crosses: Crosses
}): ReactElement => {
  const { photo, ids, crosses } = props
  return (
    <ul className="mark-list">
      {ids.map((id) => (
        <li key={id}>
          <button
            type="button"
            aria-pressed={crosses.activeId === id}
            onClick={() => crosses.choose(id, 'by-name')}
          >
            <span aria-hidden="true">{markOf(photo, id) === undefined ? '○' : '✓'}</span>{' '}
            {markWords(photo, id)}
            <span className="visually-hidden">
              {markOf(photo, id) === undefined ? ', still to be put' : ', put'}
            </span>
          </button>
        </li>
      ))}
    </ul>
  )
}
