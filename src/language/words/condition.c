/* SPDX-License-Identifier: MIT */
/* condition: what a read asks of the defense. */
#include "language/words/grammar.h"

/* Where to: helps to left block. False: it was begun, and is no place. */
static bool place_part(struct cursor *c, struct condition *out)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(out->verb, slots);
    for (size_t i = 0; i < count; i++) {
        if (slots[i].letter == 'P' && take_str(c, slots[i].preposition)) {
            out->place = place_read(c, 0);
            return out->place != NULL;
        }
    }
    return true;
}

static bool guard_read(struct cursor *c, struct condition *out, struct who *object)
{
    struct phrase phrase;
    if (!phrase_read(c, FOR_DEFENDERS, &phrase)) {
        return false;
    }
    out->verb = phrase.verb;
    event_object_read(c, &out->verb, &phrase, object);
    return place_part(c, out);
}

/* What two defenders do together: x1 and x3 switch, x1 and x5 trap 1. */
static bool both_read(struct cursor *c, struct condition *out)
{
    return take_words(c, "and") && person_read(c, &out->other) && who_defends(&out->other) &&
           guard_read(c, out, &out->object);
}

static bool state_read(struct cursor *c, struct condition *out)
{
    if (take_words(c, "is open")) {
        out->kind = COND_OPEN;
    } else if (take_words(c, "is covered")) {
        out->kind = COND_COVERED;
    } else if (take_words(c, "is denied")) {
        out->kind = COND_DENIED;
    } else {
        return false;
    }
    return true;
}

static bool one_read(struct cursor *c, struct condition *out)
{
    if (take_words(c, "otherwise")) {
        out->kind = COND_OTHERWISE;
        return true;
    }
    if (!person_read(c, &out->who)) {
        return false;
    }
    if (!who_defends(&out->who)) {
        return (out->who.kind == WHO_PLAYER || out->who.kind == WHO_ROLE) && state_read(c, out);
    }
    struct cursor_mark mark = cursor_mark(c);
    if (both_read(c, out)) {
        out->kind = COND_BOTH;
        return true;
    }
    cursor_back(c, mark);
    out->other = out->object = (struct who){.kind = WHO_NONE};
    out->kind = COND_VERB;
    return guard_read(c, out, &out->other);
}

bool condition_read(struct cursor *c, struct condition *out)
{
    struct cursor_mark mark = cursor_mark(c);
    *out = (struct condition){.kind = COND_OTHERWISE};
    if (!one_read(c, out)) {
        cursor_back(c, mark);
        return false;
    }
    out->span = cursor_taken(c, mark.at);
    return true;
}
