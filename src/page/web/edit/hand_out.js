// SPDX-License-Identifier: MIT
// hand_out: a file that the page has made, to whoever sits at it.

export function handOut(blob, name) {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), 10000) // ms: by then the browser has it (ours)
}
