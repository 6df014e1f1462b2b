// SPDX-License-Identifier: MIT
// theme: light or dark: what was chosen in this browser, else what the system has.
const KEPT = 'courtwright-theme'
const system = matchMedia('(prefers-color-scheme: dark)')

function chosen() {
  try {
    return localStorage.getItem(KEPT)
  } catch {
    return null
  }
}

export const isDark = () => document.documentElement.hasAttribute('data-dark')

export function useTheme() {
  document.documentElement.toggleAttribute('data-dark', chosen() ? chosen() === 'dark' : system.matches)
}

export function turnTheme() {
  document.documentElement.toggleAttribute('data-dark')
  try {
    localStorage.setItem(KEPT, isDark() ? 'dark' : 'light')
  } catch {
    // it holds for this visit then
  }
}

export function onSystemTheme(changed) {
  system.addEventListener('change', () => {
    useTheme()
    changed()
  })
}
