import type { ComparedField, FieldOf, FieldValue, PartField } from '../compare/comparedPart'
import type { Layout } from '../document/layout'
import { measureWords } from '../document/placeSchema'
import { angleText } from '../../units/angle'
import { massWithUnit } from '../../units/mass'
import { STRAP_IDS } from '../../straps/strap'
import { familyWord, strapName } from './names'
import { axisOffText, judgedLength } from './weldedWords'

type Units = Layout['units']

const FIELD_NAMES: Readonly<Record<PartField, string>> = {
  name: 'name',
  x: 'x, rearward',
  y: 'y, to the right',
  z: 'z, up',
  form: 'fixed by',
  'on-tube': 'on',
  plan: 'turn in plan',
  lean: 'lean',
  rise: 'rise of the shank',
  thickness: 'thickness',
  hole: 'hole',
  width: 'width',
  edge: 'edge distance',
  gap: 'gap between the plates',
  shear: 'shear',
  thread: 'thread',
  eye: 'eye, inside',
  over: 'strap reaches its bar',
  'guide-hoops': 'guide hoops',
  role: 'kind of tube',
  'outside-diameter': 'outside diameter',
  wall: 'wall',
  'hip-height': 'hip point above the cushion',
  recline: 'recline',
  'slide-forward': 'slide forward',
  'slide-rearward': 'slide rearward',
  'most-upright': 'most upright',
  'most-reclined': 'most reclined',
  'rim-x': 'backrest rim, behind the hip point in the seat',
  'rim-z': 'backrest rim, up the torso line',
  'shell-thickness': 'shell thickness',
  'side-outline': 'outline from the side',
  'top-outline': 'outline from above',
  'slot-straps': 'straps through it',
  face: 'cut in the',
  length: 'long side',
  height: 'short side',
  turn: 'turn',
  arrangement: 'points',
  diagonal: 'shoulder of the diagonal',
  'thigh-straps': 'thigh straps run',
  'shoulder-tail': 'joined tail',
  'adjuster-place': 'adjuster from the anchor',
  'adjuster-length': 'adjuster length',
  'bolt-diameter': 'bolt',
  'bolt-grade': 'bolt grade',
  torque: 'torque',
  'bolt-source': 'where the bolt is written',
  webbing: 'webbing width',
  material: 'webbing',
  buckle: 'buckle',
  'lap-adjuster': 'lap adjuster',
  'head-and-neck': 'head-and-neck restraint',
  'adjuster-tail': 'adjuster tail',
  'wrap-return': 'return of a wrap',
  sex: 'sex',
  stature: 'stature',
  mass: 'mass',
  measured: 'measured',
  mirrored: 'pair moves as one',
}

const familyOf = (of: 'shoulder' | 'lap' | 'sub'): string =>
  familyWord(of === 'sub' ? 'sub-left' : `${of}-left`)

const ofWords = (field: PartField, of: FieldOf): string => {
  if (of === null) return FIELD_NAMES[field]
  if (typeof of === 'number') return `point ${of}, ${FIELD_NAMES[field]}`
  if (of === 'shoulder' || of === 'lap' || of === 'sub') return `${familyOf(of)}: ${FIELD_NAMES[field]}`
  return `${measureWords(of)}, measured`
}

/** What a field is called, as a lower-case name: "x, rearward"; "point 2, z, up"; "shoulder: webbing width". */
export const fieldName = ({ field, of }: Pick<ComparedField, 'field' | 'of'>): string => ofWords(field, of)

const WORDS: Readonly<Record<string, string>> = {
  plate: 'tab',
  insert: 'insert',
  eye: 'eye bolt',
  single: 'single shear',
  double: 'double shear',
  over: 'over its top',
  under: 'under its bottom',
  'harness-bar': 'harness bar',
  cage: 'cage tube',
  floor: 'floor tube',
  back: 'backrest',
  side: 'side',
  cushion: 'cushion',
  'rotary-cam': 'rotary cam',
  'under-thighs': 'under the thighs',
}

/** Fields whose words are the file's own and not what somebody typed. */
const CHOSEN: readonly PartField[] = ['form', 'shear', 'over', 'role', 'face', 'buckle', 'thigh-straps']

const wordText = (field: PartField, word: string): string => {
  if (word === '') return field === 'on-tube' ? 'no tube' : 'nothing'
  if (field === 'slot-straps')
    return STRAP_IDS.filter((strap) => word.split(' ').includes(strap))
      .map(strapName)
      .join(', ')
  return CHOSEN.includes(field) ? (WORDS[word] ?? word) : word
}

/** A value of a field with its unit, as the layout shows them; in inches the mm stand beside them. */
export const fieldValueText = (field: PartField, value: FieldValue | null, units: Units): string => {
  if (value === null) return '—'
  if (value.kind === 'word') return wordText(field, value.word)
  if (value.kind === 'outline') return `${value.points} points`
  switch (value.unit) {
    case 'mm':
      return signed(value.value, (size) => judgedLength(size, units.length))
    case 'deg':
      return angleText(value.value)
    case 'kg':
      return massWithUnit(value.value, units.mass)
    case 'Nm':
      return `${value.value} N·m`
    case 'count':
      return `${value.value}`
  }
}

/** A size with a true minus sign before it. */
const signed = (value: number, text: (size: number) => string): string => {
  const size = text(Math.abs(value))
  return value < 0 && size !== text(0) ? `−${size}` : size
}

const AXES: readonly PartField[] = ['x', 'y', 'z']

/** By how much a variant differs in a field: "12 mm rearward", "+1.5°", "another outline"; null where the two values say it all. */
export const fieldByText = (
  {
    field,
    by,
    before,
    after,
  }: {
    readonly field: PartField
    readonly by: number | null
    readonly before: FieldValue | null
    readonly after: FieldValue | null
  },
  units: Units,
): string | null => {
  if (before?.kind === 'outline' && after?.kind === 'outline') return 'another outline'
  if (by === null || after?.kind !== 'number') return null
  if (AXES.includes(field)) return axisOffText(field as 'x' | 'y' | 'z', by, units.length)
  const text = fieldValueText(field, { ...after, value: by }, units)
  return by > 0 ? `+${text}` : text
}
