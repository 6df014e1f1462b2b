/* SPDX-License-Identifier: MIT */
/* label_line: what an order disc on its own line leaves of it to be seen. */
#include "picture/scene/labels.h"

#include <math.h>

#define HIDES_LEG 90.0 /* of score: it lies on the other leg of its line */
#define STUB 3.0       /* radii of a line that are seen on each side: less reads as dashes (ours) */
#define STUBS 36.0     /* of score, where nothing is */

/* Does a disc on a line hide another stretch of it, the other leg of a way there and back? */
static bool hides_leg(const struct stroke *stroke, const struct candidate *place, double reach)
{
    const struct path *path = &stroke->path;
    for (size_t i = 0; place->on && i < path->count; i++) {
        if (fabs(path->along[i] - place->along) > 2 * reach &&
            vec2_distance(path->at[i], place->at) < reach) {
            return true;
        }
    }
    return false;
}

/* Would a disc there hide a sharp corner, and with it that somebody planted and turned? */
static bool hides_corner(const struct stroke *stroke, double along, double reach)
{
    const struct trail *trail = &stroke->trail;
    for (size_t i = 1; trail->corner && i + 1 < trail->count && i < stroke->path.count; i++) {
        if (trail->corner[i] && fabs(stroke->path.along[i] - along) < reach) {
            return true;
        }
    }
    return false;
}

/* A disc lies on a line only where enough of it is seen on both sides: of a zigzag two waves.
 * `tail`: it may be where the line begins, which comes out from under it. `off`: how far its middle
 * is from the line, of which it hides the less. */
bool disc_leaves_enough(const struct drawing *drawing, const struct stroke *stroke, double along,
                        double whole, bool tail, double off)
{
    const struct sizes *size = &drawing->size;
    double white = disc_white(size), hides = real_sqrt(real_max(0, white * white - off * off));
    bool stem = stroke->class == CLASS_SCREEN; /* without it its bar is a stroke of the pen */
    double least = hides + (tail && !stem ? 0.4 : 1.2) * size->order;
    double first = tail ? 0 : least;
    if (along < first || whole - along < least ||
        hides_corner(stroke, along, white + 0.6 * size->order)) {
        return false;
    }
    double waves = whole - 2 * hides - size->wave_in - size->wave_out;
    return stroke->class != CLASS_DRIBBLE || waves >= (off > 0 ? 1 : 2) * size->wave;
}

bool stroke_is_solid(enum scene_class class)
{
    return class == CLASS_MOVE || class == CLASS_SCREEN || class == CLASS_SHOT;
}

/* What a disc on a short line costs, which would be seen as a pass on both sides of it. */
static double stubs_score(const struct drawing *drawing, const struct stroke *stroke,
                          const struct candidate *place, double whole)
{
    const struct sizes *size = &drawing->size;
    if (!place->on || !stroke_is_solid(stroke->class)) {
        return 0;
    }
    double white = disc_white(size), head = stroke->head ? size->head_length : 0;
    double tail = place->along - white, tip = whole + head - place->along - white;
    double shorter = tail <= 0.2 * size->order ? tip : real_min(tail, tip);
    double shot = stroke->class == CLASS_SHOT ? 3 : 1; /* it is two lines, or nobody knows it */
    return shot * STUBS * real_max(0, 1 - shorter / (STUB * size->order));
}

double on_line_score(const struct drawing *drawing, const struct stroke *stroke,
                     const struct candidate *place, double whole)
{
    const struct sizes *size = &drawing->size;
    bool on_head = place->on && stroke->head &&
                   segment_distance(place->at, stroke->back, stroke->tip, NULL) <
                       size->order + size->head_width / 2;
    bool hides = on_head || hides_leg(stroke, place, 1.15 * size->order);
    return stubs_score(drawing, stroke, place, whole) + (hides ? HIDES_LEG : 0);
}
