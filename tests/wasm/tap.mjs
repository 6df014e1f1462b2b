// SPDX-License-Identifier: MIT
// tap: what the suites of the module print.
let number = 0, failed = 0

export function check(good, what, why = '') {
  number++
  failed += good ? 0 : 1
  console.log(`${good ? 'ok' : 'not ok'} ${number} - ${what}`)
  if (!good && why) {
    console.log('# ' + String(why).slice(0, 3000).replace(/\n/g, '\n# '))
  }
}

export function done() {
  console.log(`1..${number}`)
  process.exit(failed || number === 0 ? 1 : 0)
}
