// SPDX-License-Identifier: MIT
// picture: the core's SVG in the page. It is drawn in the theme wanted, so that its own style sheet (for pages that
// know no theme) is left out: the page's policy lets no style in that it does not know.

export const bare = (text) => text.replace(/<style\b[^]*?<\/style>/g, '')

export function svgOf(text) {
  if (!text) {
    return null
  }
  const svg = new DOMParser().parseFromString(bare(text), 'image/svg+xml').documentElement
  return document.adoptNode(svg)
}

// What moves has its colors from its style alone, and the policy lets no style in: they become attributes. What the
// style says for a dark system or for paper is left out, as in a still.
function dress(svg, text) {
  for (const [, rules] of text.matchAll(/<style\b[^>]*>([^]*?)<\/style>/g)) {
    const sheet = new CSSStyleSheet()
    sheet.replaceSync(rules)
    for (const rule of [...sheet.cssRules].filter((one) => one instanceof CSSStyleRule)) {
      for (const element of svg.querySelectorAll(rule.selectorText)) {
        for (const name of rule.style) {
          element.setAttribute(name, rule.style.getPropertyValue(name))
        }
      }
    }
  }
}

// The picture that moves, at time 0 and stopped; its still is taken out.
export function movingOf(text) {
  const svg = svgOf(text)
  if (svg) {
    svg.querySelectorAll('.still').forEach((still) => still.remove())
    dress(svg, text)
    const moving = svg.querySelector('.moving')
    moving.removeAttribute('display')
    moving.querySelectorAll(':scope > set').forEach((set) => set.remove())
  }
  return svg
}
