/* SPDX-License-Identifier: MIT */
/* moving_keys: a way through time brought to few keys. Takes close samples, gives keys between
 * which everybody goes straight and evenly, never further from where he was than the bound. A key
 * need not lie on a sample: from each the longest stretch is taken that stays within the bound of
 * all it passes, and of some such ends the one from which the next comes furthest. Must not know
 * what moves. */
#include "picture/scene/drawing.h"

#define INSIDE 0.97 /* of the bound, for a strip: four of them stand for a circle, a bit larger */
#define ASIDE 0.8   /* of the way to the edge of what is possible, for an end to be tried */
enum { STRIPS = 4, SHORTER = 3, ENDS = 9 };

/* ---- between two keys ---- */

/* Where the straight and even way from a to b is at t. */
static struct vec2 between(const struct moving_key *a, const struct moving_key *b, double t)
{
    return b->t > a->t ? vec2_mix(a->at, b->at, (t - a->t) / (b->t - a->t)) : b->at;
}

/* Speeds with which some samples are passed near enough: along x, y, x + y and x - y. */
struct speeds {
    double least[STRIPS], most[STRIPS];
};
struct samples {
    const struct moving_key *at;
    size_t count;
    double within, grain;
    struct speeds *left; /* from the key before: see reach */
};

/* Is the way between two keys near enough to all samples after `first`, up to `last`? */
static bool holds(const struct samples *samples, const struct moving_key *a, size_t first,
                  const struct moving_key *b, size_t last)
{
    for (size_t i = first + 1; i <= last; i++) {
        if (!vec2_near(between(a, b, samples->at[i].t), samples->at[i].at, samples->within)) {
            return false;
        }
    }
    return true;
}

static double grained(double value, double grain)
{
    return grain > 0 ? floor(value / grain + 0.5) * grain : value;
}

static struct moving_key key_near(const struct samples *samples, double t, struct vec2 at)
{
    return (struct moving_key){
        t, vec2_of(grained(at.x, samples->grain), grained(at.y, samples->grain))};
}

/* ---- the speeds with which all samples so far are passed near enough ---- */

static void strips_of(struct vec2 v, double strip[STRIPS])
{
    strip[0] = v.x;
    strip[1] = v.y;
    strip[2] = v.x + v.y;
    strip[3] = v.x - v.y;
}

static void narrow(struct speeds *speeds, int strip, double least, double most)
{
    speeds->least[strip] = real_max(speeds->least[strip], least);
    speeds->most[strip] = real_min(speeds->most[strip], most);
}

/* What each two strips say of the others. */
static void speeds_close(struct speeds *speeds)
{
    const double *l = speeds->least, *m = speeds->most;
    narrow(speeds, 0, (l[2] + l[3]) / 2, (m[2] + m[3]) / 2);
    narrow(speeds, 1, (l[2] - m[3]) / 2, (m[2] - l[3]) / 2);
    narrow(speeds, 2, l[0] + l[1], m[0] + m[1]);
    narrow(speeds, 3, l[0] - m[1], m[0] - l[1]);
}

static bool speeds_narrow(struct speeds *speeds, const struct samples *samples,
                          const struct moving_key *from, size_t index)
{
    const struct moving_key *sample = &samples->at[index];
    double seconds = sample->t - from->t, strip[STRIPS];
    strips_of(vec2_scale(vec2_sub(sample->at, from->at), 1 / seconds), strip);
    for (int i = 0; i < STRIPS; i++) {
        double room = INSIDE * samples->within / seconds * (i < 2 ? 1 : sqrt(2));
        narrow(speeds, i, strip[i] - room, strip[i] + room);
    }
    speeds_close(speeds);
    for (int i = 0; i < STRIPS; i++) {
        if (speeds->least[i] > speeds->most[i]) {
            return false;
        }
    }
    return true;
}

/* The last sample that one straight way can come to from a key at `first`; with `left`, the speeds
 * that are possible up to each sample. */
static size_t reach(const struct samples *samples, const struct moving_key *from, size_t first,
                    struct speeds *left)
{
    struct speeds speeds;
    for (int i = 0; i < STRIPS; i++) {
        speeds.least[i] = -1e9;
        speeds.most[i] = 1e9;
    }
    size_t last = first;
    while (last + 1 < samples->count && speeds_narrow(&speeds, samples, from, last + 1)) {
        last++;
        if (left) {
            left[last] = speeds;
        }
    }
    return last;
}

/* ---- the next key ---- */

static bool may_stand(const struct speeds *speeds)
{
    bool still = true;
    for (int i = 0; i < STRIPS; i++) {
        still = still && speeds->least[i] <= 0 && speeds->most[i] >= 0;
    }
    return still;
}

/* A place to be tried as the next key's: by the middle of the speeds that are possible, on a grain
 * beside that, by speeds near their edges. Standing still where that is possible. */
static struct moving_key end_tried(const struct samples *samples, const struct moving_key *from,
                                   const struct speeds *speeds, double t, int which)
{
    static const struct vec2 edge[] = {{1, 0}, {-1, 0}, {0, 1}, {0, -1}};
    const double *l = speeds->least, *m = speeds->most, seconds = t - from->t;
    struct vec2 speed = vec2_of((l[0] + m[0]) / 2, (l[1] + m[1]) / 2);
    struct vec2 half = vec2_of((m[0] - l[0]) / 2, (m[1] - l[1]) / 2), beside = {0, 0};
    if (which == 0 && may_stand(speeds)) {
        return (struct moving_key){t, from->at};
    }
    if (which > 4) {
        beside = vec2_scale(edge[which - 5], samples->grain);
    } else if (which > 0) {
        const struct vec2 *to = &edge[which - 1];
        speed = vec2_add(speed, vec2_of(ASIDE * to->x * half.x, ASIDE * to->y * half.y));
    }
    return key_near(samples, t, vec2_add(vec2_add(from->at, beside), vec2_scale(speed, seconds)));
}

struct next_key {
    struct moving_key key;
    size_t sample, reach;
};

/* Of all ends that hold at one sample: is there one, and is it better than the best so far? */
static bool try_ends(const struct samples *samples, const struct moving_key *from, size_t first,
                     size_t last, struct next_key *best)
{
    bool any = false;
    for (int which = 0; which < ENDS; which++) {
        struct moving_key key =
            end_tried(samples, from, &samples->left[last], samples->at[last].t, which);
        if (!holds(samples, from, first, &key, last)) {
            continue;
        }
        size_t far = reach(samples, &key, last, NULL);
        any = true;
        if (far > best->reach) {
            *best = (struct next_key){key, last, far};
        }
    }
    return any;
}

static struct next_key next_key(const struct samples *samples, const struct moving_key *from,
                                size_t first)
{
    size_t last = reach(samples, from, first, samples->left);
    struct next_key best = {{0}, 0, 0};
    for (int good = 0; good < SHORTER && last > first; last--) {
        good += try_ends(samples, from, first, last, &best);
    }
    if (best.sample == 0) { /* none of them: on the sample itself, which is near enough */
        best.sample = first + 1;
        best.key = key_near(samples, samples->at[first + 1].t, samples->at[first + 1].at);
    }
    return best;
}

/* ---- rows ---- */

static bool is_last(const moving_keys *keys, const struct moving_key *key, double within)
{
    if (keys->count == 0) {
        return false;
    }
    const struct moving_key *last = &keys->at[keys->count - 1];
    return key->t <= last->t && vec2_near(key->at, last->at, within);
}

void keys_add(struct arena *arena, moving_keys *keys, const struct moving_key *sample, size_t count,
              double within, double grain)
{
    struct samples samples = {sample, count, within, grain,
                              arena_array(arena, struct speeds, count)};
    if (count > 0 && !is_last(keys, &sample[0], within)) {
        VEC_PUSH(arena, keys, key_near(&samples, sample[0].t, sample[0].at));
    }
    for (size_t first = 0; first + 1 < count;) {
        struct next_key next = next_key(&samples, &keys->at[keys->count - 1], first);
        VEC_PUSH(arena, keys, next.key);
        first = next.sample;
    }
}

void keys_copy(struct arena *arena, moving_keys *keys, const moving_keys *way, double from,
               double to)
{
    for (size_t i = 0; i + 1 < way->count; i++) {
        const struct moving_key *a = &way->at[i], *b = &way->at[i + 1];
        double t0 = real_max(a->t, from), t1 = real_min(b->t, to);
        if (t0 >= t1) {
            continue; /* a jump, or not in the stretch */
        }
        struct moving_key begin = {t0, between(a, b, t0)}, end = {t1, between(a, b, t1)};
        if (!is_last(keys, &begin, 1e-6)) {
            VEC_PUSH(arena, keys, begin);
        }
        VEC_PUSH(arena, keys, end);
    }
}
