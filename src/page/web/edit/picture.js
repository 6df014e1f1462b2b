// SPDX-License-Identifier: MIT
// picture: the core's SVG in the page. It is drawn in the theme wanted, so that its own style sheet (for pages that
// know no theme) is left out: the page's policy lets no style in that it does not know.

export function svgOf(text) {
  if (!text) {
    return null
  }
  const bare = text.replace(/<style\b[^]*?<\/style>/g, '')
  const svg = new DOMParser().parseFromString(bare, 'image/svg+xml').documentElement
  return document.adoptNode(svg)
}

// The picture that moves, at time 0 and stopped; its still is taken out.
export function movingOf(text) {
  const svg = svgOf(text)
  if (svg) {
    svg.querySelectorAll('.still').forEach((still) => still.remove())
    const moving = svg.querySelector('.moving')
    moving.removeAttribute('display')
    moving.querySelectorAll(':scope > set').forEach((set) => set.remove())
  }
  return svg
}
