// SPDX-License-Identifier: MIT
// fix: what a help proposes, as a change of the text: {from, to, insert} or null. What the coach wrote is replaced only
// where the help names just what is to stand in its place; an example or a choice is for the coach to write.

const bare = (text) => text.replace(/^"|"$/g, '').toLowerCase()

// How many letters are other, more or fewer.
function apart(a, b) {
  let row = [...Array(b.length + 1).keys()]
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      next[j] = Math.min(row[j] + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1))
    }
    row = next
  }
  return row[b.length]
}

// "did you mean `passes`?": the word for the one that is misspelt
function meant(help, here, span) {
  const found = help.match(/^did you mean (?:`([^`]+)`|"([^"]+)"|([^`"?,]+))\?$/)
  if (!found) {
    return null
  }
  const text = found[1] || found[2] || found[3]
  const letters = Math.max(bare(here).length, bare(text).length)
  if (apart(bare(here), bare(text)) > Math.max(1, letters / 2)) {
    return null // it is not for what is marked, or not for all of it
  }
  return {...span, insert: /^".*"$/.test(here) ? `"${bare(text) === text.toLowerCase() ? text : text.slice(1, -1)}"` : text}
}

// line: its text, where it begins, the lines before and after it; span: where what is meant stands in it.
export function fixOf(help, line, span) {
  const here = line.text.slice(span.from - line.from, span.to - line.from)
  const word = meant(help, here, span)
  if (word) {
    return word
  }
  const said = help.match(/^write: ((?:x?[1-9]|the coach)\b[^,;:`"\u2026]*?)(, before this sentence)?$/)
  if (!said) {
    return null
  }
  const [, text, before] = said, indent = line.text.match(/^\s*/)[0], whole = line.text.trim()
  if (before) {
    return line.before.trim() === text ? null : {from: line.from, to: line.from, insert: indent + text + '\n'}
  }
  if (/^step\b/.test(whole) && / stays?$/.test(text)) {
    return line.after.trim() === text ? null : {from: line.from + line.text.length, to: line.from + line.text.length, insert: '\n' + indent + '  ' + text}
  }
  // the same sentence to another place
  const upTo = (one) => (one.match(/^\S+ (?:\w+ )?\w+ to /) || [''])[0]
  const sentence = here.trim() === whole && upTo(text) && upTo(whole) === upTo(text) && !/[,;#"]| (and|then|as|when|after|until) /.test(whole)
  return sentence ? {...span, insert: text} : null
}
