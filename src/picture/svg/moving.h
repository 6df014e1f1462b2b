/* SPDX-License-Identifier: MIT */
/* moving: a picture that moves as one group of live SVG, for whoever has the court and the root
 * element. Declarative animation only (animate, animateTransform, set), every time of it on the
 * clock of the document, so that a script may pause it and go anywhere with svg.pauseAnimations()
 * and svg.setCurrentTime(t), also back, and a document without a script plays it once and keeps the
 * end. No id is written, none is needed.
 *
 *     <g class="moving">
 *       <g>                         a part, while it is shown
 *         <g class="trails ...">      of its lines; move p3, pass, dribble, screen, shot ...
 *         <g class="roads ...">       the same and their heads; its title
 *       <g>                         all that is there in every part
 *         <g class="defender x3">     X and numeral
 *         <g class="ball">            the ring, which goes with who has it
 *         <g class="player p3">       numeral
 *         <g class="screen p5">       a bar
 *         <g class="ball">            the ball in the air
 *
 * Paint is in plain attributes by the theme and in classes f-ROLE, s-ROLE, as in svg_write. The
 * root is to say fill="none" stroke-linejoin="round" text-anchor="middle" and the font. */
#ifndef PICTURE_SVG_MOVING_H
#define PICTURE_SVG_MOVING_H

#include "base/writer.h"
#include "picture/scene/moving.h"

struct moving_options {
    bool loop;   /* begins again at its end, for ever */
    bool styled; /* classes for paint, no literal colors: the page around it has a style */
    bool hidden; /* display="none" until the animation begins: for renderers that do not animate */
};
void svg_moving(const struct moving *moving, const struct moving_options *options,
                struct writer *writer);

/* The pieces of it, for a page whose script puts them together by a table of its own, in quarters
 * of a point as in the group above: the shape of a mark without paint; an element to stand round it
 * that has the paint, as classes; and one to stand round a group's marks. */
void svg_moving_shape(const struct moving_mark *mark, struct writer *writer);
void svg_moving_paint(const struct moving_mark *mark, struct writer *writer);
void svg_moving_frame(const struct moving_group *group, struct writer *writer);

#endif
