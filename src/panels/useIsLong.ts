import { useEffect, useState } from 'react'

/** What is there sooner than this, ms, was never worth a word. Our judgement. */
const QUIET_MS = 300

/** Whether something has been so for longer than is worth no word. */
export const useIsLong = (isSo: boolean): boolean => {
  const [isLong, setLong] = useState(false)
  useEffect(() => {
    if (!isSo) return undefined
    const timer = setTimeout(() => setLong(true), QUIET_MS)
    return () => {
      clearTimeout(timer)
      setLong(false)
    }
  }, [isSo])
  return isSo && isLong
}
