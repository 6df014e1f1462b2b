// SPDX-License-Identifier: MIT
// headings: which play of a text a line is in, as far as that can be told without the core.

// The heading that a line is under; above all of them the first one's, so that something is to be seen; 0: none.
export function playLine(text, line) {
  const headings = []
  text.split('\n').forEach((one, index) => {
    if (/^\s*(play|drill)\b/i.test(one)) {
      headings.push(index + 1)
    }
  })
  return headings.filter((heading) => heading <= line).pop() || headings[0] || 0
}
