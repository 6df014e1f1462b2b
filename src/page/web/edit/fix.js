// SPDX-License-Identifier: MIT
// fix: what a help proposes, as a change of the text, where it can be made by itself: {from, to, insert} or null.

const firstWord = (text) => (text.trim().match(/^\S+/) || [''])[0]

// "write: 3 stays, or ..." -> "3 stays"; "did you mean `passes`?" -> "passes"
export function proposed(help) {
  const meant = help.match(/did you mean [`"]?([^`"?]+)[`"]?\?/)
  const quoted = help.match(/write `([^`…@]+)`/)
  const said = help.match(/^write: (.+?)(?:, (?:or|if|which|before|in place)\b.*|;.*)?$/)
  const found = meant || said || quoted
  return found ? found[1].trim() : ''
}

// line: the text of its line and where it begins; span: where what is meant stands in it.
export function fixOf(help, line, span) {
  const text = proposed(help)
  if (!text) {
    return null
  }
  const here = line.text.slice(span.from - line.from, span.to - line.from)
  const indent = line.text.match(/^\s*/)[0]
  const whole = {from: line.from + indent.length, to: line.from + line.text.length}
  if (/, before /.test(help)) {
    return {from: line.from, to: line.from, insert: indent + text + '\n'}
  }
  if (/^did you mean|`/.test(help) && firstWord(text) !== firstWord(line.text)) {
    return {...span, insert: text}
  }
  if (firstWord(here) === firstWord(text)) {
    return {...span, insert: text}
  }
  if (firstWord(line.text) === firstWord(text)) {
    return {...whole, insert: text}
  }
  if (/^(step|read|option)\b/.test(line.text.trim())) {
    return {from: whole.to, to: whole.to, insert: '\n' + indent + '  ' + text}
  }
  return {from: whole.to, to: whole.to, insert: '\n' + indent + text}
}
