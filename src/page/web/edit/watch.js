// SPDX-License-Identifier: MIT
// watch: one diagram as it moves, with a time line to go anywhere on, half speed, and what each player does when.
import {movingOf} from './picture.js'

const BEFORE = 1.0 // s: the picture stands before anybody moves; as the moving picture has it
const SVG = 'http://www.w3.org/2000/svg'

function make(name, attributes, parent, text) {
  const one = document.createElementNS(SVG, name)
  Object.entries(attributes).forEach(([key, value]) => one.setAttribute(key, value))
  if (text !== undefined) {
    one.textContent = text
  }
  parent.append(one)
  return one
}

const ends = (task) => Math.max(...['released', 'set', 'caught', 'used', 'arrived', 'started'].map((key) => task[key] ?? 0))

const doing = (task) => task.other ? `${task.verb} ${task.other === 'the coach' ? 'C' : task.other}` : task.verb
const LETTER = 5.6 // px: how wide one is at most, on the whole, in the size of the words on bars

// What takes no time is told without a bar: "stays". A pass is as long as the ball is in the air. `room`: the words may
// stand out of their bar as far as there.
function bar(svg, task, y, x, room) {
  const from = x(task.released ?? task.started), to = x(ends(task))
  const told = to - from < 2, words = doing(task)
  if (!told) {
    const kind = task.released !== undefined ? 'bar pass' : task.set !== undefined ? 'bar screen' : 'bar'
    const box = make('rect', {class: kind, x: from, y: y + 2, width: to - from, height: 12}, svg)
    make('title', {}, box, `${task.who} ${words}`)
  }
  const text = [words, task.verb].find((one) => room - from > LETTER * one.length + 8)
  if (text) {
    make('text', {class: 'verb', x: from + 5, y: y + 12}, svg, text)
  }
}

// Rows of bars: who does something, from when to when; the ball's row has its passes dashed. tasks: how many of them
// its picture tells of; what follows is a read's.
export function strip(segment, width = 640, tasks = segment.tasks.length) {
  const done = segment.tasks.slice(0, tasks), whole = tasks >= segment.tasks.length
  const lasts = whole ? segment.duration : Math.max(0, ...done.filter((task) => task.started !== undefined).map(ends))
  const seconds = Math.max(1, Math.ceil(lasts)), left = 34, pitch = 18
  const who = [...new Set(done.filter((task) => task.started !== undefined && !task.who.startsWith('x')).map((task) => task.who))]
    .sort((a, b) => parseInt(a, 10) - parseInt(b, 10))
  const x = (time) => left + (width - left - 8) * Math.min(time, seconds) / seconds
  const height = 22 + pitch * (who.length + 1)
  const svg = document.createElementNS(SVG, 'svg')
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`)
  svg.setAttribute('class', 'strip')
  svg.setAttribute('role', 'img')
  const told = done.filter((task) => task.started !== undefined)
    .map((task) => `${task.who} ${doing(task)} from ${task.started.toFixed(1)} to ${ends(task).toFixed(1)} s`)
  make('title', {}, svg, `Who does what when: ${told.join('; ')}`)
  for (let half = 0; half <= seconds * 2; half++) {
    make('path', {class: half % 2 ? 'half' : 'second', d: `M${x(half / 2)} 16V${height - 4}`}, svg)
    if (half % 2 === 0) {
      make('text', {class: 'axis', x: x(half / 2), y: 11, 'text-anchor': 'middle'}, svg, `${half / 2} s`)
    }
  }
  who.forEach((name, row) => {
    const y = 20 + row * pitch
    make('text', {class: 'who', x: 14, y: y + 12, 'text-anchor': 'middle'}, svg, name === 'the coach' ? 'C' : name)
    const own = done.filter((one) => one.who === name && one.started !== undefined)
    own.forEach((task) => {
      const begins = x(task.released ?? task.started)
      const next = Math.min(...own.map((one) => x(one.released ?? one.started)).filter((one) => one > begins))
      bar(svg, task, y, x, Math.min(next, width))
    })
  })
  const y = 20 + who.length * pitch + 8
  make('text', {class: 'who', x: 14, y: y + 4, 'text-anchor': 'middle'}, svg, 'ball')
  for (const span of segment.spans.filter((one) => one.from < seconds)) {
    const kind = span.state === 'held' ? 'ball' : 'ball air'
    make('path', {class: kind, d: `M${x(Math.max(0, span.from))} ${y}H${x(span.to)}`}, svg)
    if (span.state === 'held' && span.by && x(span.to) - x(Math.max(0, span.from)) > 16) {
      make('text', {class: 'holder', x: x(Math.max(0, span.from)) + 9, y: y + 4, 'text-anchor': 'middle'}, svg, span.by === 'the coach' ? 'C' : span.by)
    }
  }
  svg.cursorAt = (() => {
    const line = make('path', {class: 'now', d: ''}, svg)
    return (time) => line.setAttribute('d', `M${x(Math.max(0, time))} 14V${height - 4}`)
  })()
  return svg
}

// Its heading is left out: the button over it says which step it is, and the floor stays where the still had it.
function withoutHeading(svg) {
  svg.querySelectorAll('.moving .caption').forEach((caption) => caption.remove())
  const {width, height} = svg.viewBox.baseVal, top = svg.querySelector('.court').getBBox().y
  svg.setAttribute('viewBox', `0 ${top} ${width} ${height - top}`)
}

export class Watch {
  // parts: {floor, panel, play, slow, line, strip, time}: elements of the page
  constructor(parts) {
    this.parts = parts
    this.open = false
    this.speed = 1
    parts.play.addEventListener('click', () => this.toggle())
    parts.slow.addEventListener('click', () => {
      this.speed = this.speed === 1 ? 0.5 : 1
      parts.slow.setAttribute('aria-pressed', String(this.speed !== 1))
    })
    parts.line.addEventListener('input', () => {
      this.stop()
      this.goTo(parts.line.valueAsNumber)
    })
  }

  // answer: of the worker's `watch`; time: where to begin, when it was open before
  show(answer, time = 0, moves = true) {
    this.open = true
    this.svg = movingOf(answer.svg)
    this.lasts = answer.lasts
    this.parts.floor.replaceChildren(this.svg)
    withoutHeading(this.svg)
    this.svg.pauseAnimations()
    this.strip = strip(answer.segment, 640, answer.tasks)
    this.parts.strip.replaceChildren(this.strip)
    this.parts.line.max = String(Math.ceil(this.lasts * 100) / 100)
    this.parts.panel.hidden = false
    this.goTo(Math.min(time, this.lasts))
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
    if (moves && !calm) {
      this.start()
    } else {
      this.stop()
    }
  }

  hide() {
    this.stop()
    this.open = false
    this.parts.panel.hidden = true
    this.parts.strip.replaceChildren()
  }

  goTo(time) {
    this.time = time
    this.svg.setCurrentTime(time + BEFORE)
    this.parts.line.value = String(time)
    this.parts.line.setAttribute('aria-valuetext', `${time.toFixed(1)} seconds of ${this.lasts.toFixed(1)}`)
    this.parts.time.textContent = `${time.toFixed(1)} s`
    this.strip.cursorAt(time)
  }

  start() {
    if (this.time >= this.lasts - 0.01) {
      this.goTo(0)
    }
    this.moving = true
    this.parts.play.textContent = 'Pause'
    let before = performance.now()
    const tick = (now) => {
      if (!this.moving) {
        return
      }
      const time = Math.min(this.time + (now - before) / 1000 * this.speed, this.lasts)
      before = now
      this.goTo(time)
      if (time >= this.lasts) {
        this.stop()
      } else {
        requestAnimationFrame(tick)
      }
    }
    requestAnimationFrame(tick)
  }

  stop() {
    this.moving = false
    this.parts.play.textContent = 'Play'
  }

  toggle() {
    if (this.moving) {
      this.stop()
    } else {
      this.start()
    }
  }
}
