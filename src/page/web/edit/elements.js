// SPDX-License-Identifier: MIT
// elements: pieces of the page, made.

export function element(name, className, text) {
  const one = document.createElement(name)
  one.className = className
  if (text !== undefined) {
    one.textContent = text
  }
  return one
}

export function button(text, act, className = '') {
  const one = element('button', className, text)
  one.type = 'button'
  one.addEventListener('click', act)
  return one
}
