import type { TextWeight } from './textWidth'

/**
 * Advance widths of the sheet's font in thousandths of its size.
 * Source: the horizontal metrics of IBM Plex Sans Condensed Regular and SemiBold as bundled (fontsource 5.3.0, latin), read from the
 * font files' hmtx and cmap tables.
 */
// prettier-ignore
const REGULAR_FROM_SPACE: readonly number[] = [
  212, 258, 382, 637, 538, 837, 626, 220, 302, 302, 414, 540, 248, 360, 248, 349,
  540, 540, 540, 540, 540, 540, 540, 540, 540, 540, 258, 258, 540, 540, 540, 431,
  803, 579, 589, 561, 607, 526, 505, 627, 637, 362, 462, 574, 453, 730, 637, 638,
  548, 638, 578, 525, 516, 611, 549, 808, 555, 534, 524, 286, 349, 286, 540, 508,
  540, 483, 524, 454, 524, 495, 294, 477, 513, 228, 228, 477, 247, 787, 513, 504,
  524, 524, 332, 439, 318, 513, 445, 698, 459, 451, 421, 310, 288, 310, 540,
]
// prettier-ignore
const REGULAR_FROM_A0: readonly number[] = [
  212, 258, 465, 535, 544, 546, 288, 526, 540, 700, 362, 463, 540, 360, 428, 540,
  422, 540, 320, 320, 540, 518, 588, 296, 540, 320, 360, 463, 732, 760, 722, 422,
  579, 579, 579, 579, 579, 579, 820, 561, 526, 526, 526, 526, 362, 362, 362, 362,
  610, 637, 638, 638, 638, 638, 638, 540, 638, 611, 611, 611, 611, 534, 548, 579,
  483, 483, 483, 483, 483, 483, 782, 454, 495, 495, 495, 495, 228, 228, 228, 228,
  502, 513, 504, 504, 504, 504, 504, 540, 504, 513, 513, 513, 513, 451, 524, 451,
]
// prettier-ignore
const BOLD_FROM_SPACE: readonly number[] = [
  212, 284, 429, 582, 533, 870, 644, 235, 303, 303, 514, 540, 274, 362, 274, 401,
  540, 540, 540, 540, 540, 540, 540, 540, 540, 540, 282, 282, 540, 540, 540, 447,
  811, 606, 600, 581, 625, 544, 523, 641, 651, 387, 494, 614, 473, 737, 651, 642,
  583, 642, 601, 546, 524, 624, 583, 861, 595, 566, 540, 299, 401, 299, 540, 502,
  540, 507, 544, 464, 544, 505, 328, 492, 532, 252, 255, 511, 268, 802, 532, 506,
  544, 544, 357, 449, 334, 533, 476, 739, 488, 483, 452, 329, 346, 329, 540,
]
// prettier-ignore
const BOLD_FROM_A0: readonly number[] = [
  212, 284, 491, 520, 560, 575, 346, 515, 540, 712, 395, 494, 540, 362, 420, 540,
  422, 540, 319, 320, 540, 539, 603, 316, 540, 320, 383, 494, 728, 757, 718, 439,
  606, 606, 606, 606, 606, 606, 859, 581, 544, 544, 544, 544, 387, 387, 387, 387,
  626, 651, 642, 642, 642, 642, 642, 540, 641, 624, 624, 624, 624, 566, 582, 613,
  507, 507, 507, 507, 507, 507, 782, 464, 505, 505, 505, 505, 254, 254, 254, 254,
  533, 532, 506, 506, 506, 506, 506, 540, 512, 533, 533, 533, 533, 483, 544, 483,
]
// prettier-ignore
const OTHER: Readonly<Record<string, readonly [regular: number, bold: number]>> = {
  'Œ': [886, 896], 'œ': [836, 818], '–': [528, 528], '—': [702, 702], '‘': [248, 269], '’': [248, 269], '“': [431, 474], '”': [431, 474], '•': [358, 380], '…': [729, 790], '′': [220, 235], '″': [382, 429], '−': [540, 540], '↑': [780, 810], '↓': [780, 810], '€': [563, 565], '⁄': [100, 98],
}

/** Letters outside the tables: the widest of the font's other Latin letters (862 and 908), rounded up. */
const OTHER_LETTER = 910

/** Letters from Hangul, Kana and Han upward and pictographs are as wide as they are high. Source: from memory. */
const FIRST_FULL_WIDTH = 0x1100

/** Advance of one letter in thousandths of the size. */
export const advanceOf = (letter: string, weight: TextWeight): number => {
  const code = letter.codePointAt(0) ?? 0
  const isBold = weight === 'bold'
  if (code >= 0x20 && code <= 0x7e)
    return (isBold ? BOLD_FROM_SPACE : REGULAR_FROM_SPACE)[code - 0x20] ?? OTHER_LETTER
  if (code >= 0xa0 && code <= 0xff)
    return (isBold ? BOLD_FROM_A0 : REGULAR_FROM_A0)[code - 0xa0] ?? OTHER_LETTER
  const other = OTHER[letter]
  if (other !== undefined) return other[isBold ? 1 : 0]
  return code >= FIRST_FULL_WIDTH && !(code >= 0x1e00 && code <= 0x2bff) ? 1000 : OTHER_LETTER
}
