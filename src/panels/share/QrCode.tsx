import { type ReactElement, useMemo } from 'react'
import { qrModules } from '../../state/share/qr'

/** Dark modules as one path: a square each, a row's neighbours joined, so that no hairline shows between them. */
const darkPath = (rows: readonly (readonly boolean[])[]): string =>
  rows
    .flatMap((row, y) =>
      row.flatMap((isDark, x) => {
        if (!isDark || row[x - 1] === true) return []
        const end = row.indexOf(false, x)
        return [`M${x} ${y}h${(end === -1 ? row.length : end) - x}v1H${x}z`]
      }),
    )
    .join('')

/** A text as a QR code, black on white in every theme as cameras want it; the reason where it is too long for one. */
export const QrCode = (props: { readonly text: string; readonly label: string }): ReactElement => {
  const code = useMemo(() => qrModules(props.text), [props.text])
  if (!code.ok) return <p className="hint">{code.error}</p>
  const { rows, size } = code.value
  return (
    <svg
      className="qr-code"
      role="img"
      aria-label={props.label}
      viewBox={`0 0 ${size} ${size}`}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={darkPath(rows)} fill="#000" />
    </svg>
  )
}
