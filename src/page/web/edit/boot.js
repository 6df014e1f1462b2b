// SPDX-License-Identifier: MIT
// boot: begins the worker before the editor is there, so that the module is made ready meanwhile.
import {Thread} from './thread.js'

const dataOf = (id) => document.getElementById(id).textContent

globalThis.courtwright = {
  another: () => new Thread(dataOf('worker'), dataOf('module'))
}
globalThis.courtwright.quick = globalThis.courtwright.another()
