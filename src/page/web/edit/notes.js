// SPDX-License-Identifier: MIT
// notes: what is pasted from a coach's notes: the marks of a list at the beginnings of lines are left out. Knows no editor.

const BULLET = /^([ \t]*)[\u2022\u2023\u25aa\u25cf\u25e6\u00b7\u2013\u2014*-][ \t]+(?=\S)/
const NUMBER = /^([ \t]*)\(?(\d{1,2})[.)][ \t]+(?=x?\d|the |everybody|all )/i // a number alone could be who acts

// Lines that count up from 1 are a list, whatever else stands between.
function counted(lines) {
  let next = 1
  return lines.map((line) => {
    const found = line.match(NUMBER)
    const is = found !== null && Number(found[2]) === next
    next += is ? 1 : 0
    return is
  })
}

export function unlisted(text) {
  const lines = text.split('\n'), numbers = counted(lines)
  return lines.map((line, index) => line.replace(numbers[index] ? NUMBER : BULLET, '$1')).join('\n')
}
