// SPDX-License-Identifier: MIT
// core: the WebAssembly module as plain functions: texts in, objects and pictures out. Lends the module the two
// functions it asks for (program/wasm/guard.c). Knows no page: runs in the worker and under node.

class Unwound {
  constructor(here, why) {
    this.here = here
    this.why = why
  }
}

const STATUS = ['ok', 'no such', 'bad option', 'broken', 'write', 'memory', 'not built', 'nothing']
const WISHES = {checks: 1, dark: 2, print: 4, fluid: 8, names: 16, a4: 32} // as in program/wasm/page.h
const sumOf = (wishes) => Object.keys(WISHES).reduce((all, wish) => all + (wishes[wish] ? WISHES[wish] : 0), 0)
const encoder = new TextEncoder()
const decoder = new TextDecoder()

export async function openCore(module) {
  const compiled = module instanceof WebAssembly.Module ? module : await WebAssembly.compile(module)
  let wasm
  const guard = (work, job, here) => {
    const stack = wasm.__stack_pointer.value
    try {
      wasm.__indirect_function_table.get(work)(job)
      return 0
    } catch (thrown) {
      if (thrown instanceof Unwound && thrown.here === here) {
        wasm.__stack_pointer.value = stack
        return thrown.why
      }
      throw thrown
    }
  }
  const unwind = (here, why) => {
    throw new Unwound(here, why)
  }
  wasm = (await WebAssembly.instantiate(compiled, {page: {guard, unwind}})).exports

  const put = (bytes) => {
    const at = wasm.take(bytes.length + 1)
    if (!at) {
      throw new Error('there was not enough memory')
    }
    const memory = new Uint8Array(wasm.memory.buffer)
    memory.set(bytes, at)
    memory[at + bytes.length] = 0
    return at
  }
  // Calls work with (address, size) of each text; the blocks are given back.
  const lend = (texts, work) => {
    const blocks = texts.map((text) => {
      const bytes = typeof text === 'string' ? encoder.encode(text) : text
      return [put(bytes), bytes.length]
    })
    try {
      return work(...blocks)
    } finally {
      blocks.forEach(([at]) => wasm.give(at))
    }
  }
  const bytes = () => new Uint8Array(wasm.memory.buffer, wasm.out_at(), wasm.out_size())
  const said = () => decoder.decode(bytes())
  const text = (status) => (status === 0 ? said() : '')
  const list = (status) => (status === 0 ? JSON.parse(said()) : [])

  wasm.classes()
  const classes = JSON.parse(said())

  return {
    raw: wasm, // for tests
    classes,
    // Files that a book may include: {name: text}.
    files(files) {
      wasm.forget_files()
      for (const [name, content] of Object.entries(files)) {
        const key = encoder.encode(name), body = encoder.encode(content)
        wasm.add_file(put(key), key.length, put(body), body.length)
      }
    },
    // line: only the play it is in is run; without it all are. It is one of `file`, an include, or of the book itself
    load(name, book, line = -1, file = '') {
      return lend([name, book, file], ([at], [from, size], [of]) => {
        wasm.load(at, from, size, of, line)
        return JSON.parse(said())
      })
    },
    // wishes: {checks, dark, print, fluid}; {status, svg}
    draw(play, diagram, wishes = {}, width = 0, salt = '') {
      return lend([salt], ([at]) => {
        const status = wasm.draw(play, diagram, sumOf(wishes), width, at)
        return {status: STATUS[status], svg: text(status)}
      })
    },
    // One diagram that moves; {status, svg}
    animate(play, diagram, wishes = {}, salt = '') {
      return lend([salt], ([at]) => {
        const status = wasm.animate(play, diagram, sumOf(wishes), at)
        return {status: STATUS[status], svg: text(status)}
      })
    },
    // A sheet as HTML; play below 0: all of them; wishes: {names, a4}; {status, html}
    paper(sheet, play, reader, wishes = {}) {
      return lend([sheet], ([at]) => {
        const status = wasm.paper(at, play, reader, sumOf(wishes))
        return {status: STATUS[status], html: text(status)}
      })
    },
    tidy: () => text(wasm.tidy()),
    positions: (play, rate) => {
      const status = wasm.positions(play, rate)
      return status === 0 ? JSON.parse(said()) : null
    },
    tolerance: (play) => list(wasm.tolerance(play)),
    // [begin, end, class] one after the other, places in bytes
    tokens: (book) => lend([book], ([at, size]) => {
      const status = wasm.tokens(at, size)
      return status === 0 ? new Uint32Array(bytes().slice().buffer) : new Uint32Array(0)
    }),
    complete: (name, book, place) =>
      lend([name, book], ([called], [at, size]) => list(wasm.complete(called, at, size, place))),
    hover: (name, book, place) =>
      lend([name, book], ([called], [at, size]) => list(wasm.hover(called, at, size, place)))
  }
}
