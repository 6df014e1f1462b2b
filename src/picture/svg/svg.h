/* SPDX-License-Identifier: MIT */
/* svg: scene to live SVG 1.1: real text, classes by meaning, literal colours first and one style
 * block for dark and print. Our own writer; needs nothing but base. */
#ifndef PICTURE_SVG_SVG_H
#define PICTURE_SVG_SVG_H

#include "base/writer.h"
#include "picture/scene/scene.h"

struct svg_options {
    struct str salt; /* part of every id's prefix, so that one drawing can stand twice in a page */
    bool fluid;      /* width 100 % instead of points */
};
void svg_write(struct arena *arena, const struct scene *scene, const struct svg_options *options,
               struct writer *writer);
/* A part of a scene for a page that has its own style and draws the floor once: groups alone, with
 * classes for paint and for whose it is ("s-ink p3 p5"), without literal colors. */
enum svg_part { SVG_FLOOR, SVG_MARKS }; /* court and basket; all but them and the ground */
void svg_write_part(const struct scene *scene, enum svg_part part, struct writer *writer);
/* The prefix of every id of this scene: a hash of what is drawn and the salt; also for print-true
 * SVG. */
struct str svg_prefix(struct arena *arena, const struct scene *scene, struct str salt);
/* Text with & < > " escaped and control characters left out. */
void svg_escape(struct writer *writer, struct str text);

#endif
