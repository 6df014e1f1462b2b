/* SPDX-License-Identifier: MIT */
/* condition: what a read asks of the defense. */
#include "language/words/grammar.h"

/* What two defenders do together. */
static bool both_read(struct cursor *c, struct condition *out)
{
    static const struct {
        const char *words;
        enum verb verb;
    } rows[] = {{"switch", VERB_SWITCHES},
                {"switches", VERB_SWITCHES},
                {"trap", VERB_TRAPS},
                {"traps", VERB_TRAPS},
                {"blitz", VERB_TRAPS}};
    if (!take_words(c, "and") || !person_read(c, &out->other) || !who_defends(&out->other)) {
        return false;
    }
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (take_words(c, rows[i].words)) {
            out->verb = rows[i].verb;
            return true;
        }
    }
    return false;
}

static bool guard_read(struct cursor *c, struct condition *out)
{
    struct phrase phrase;
    if (!phrase_read(c, FOR_DEFENDERS, &phrase)) {
        return false;
    }
    out->kind = COND_VERB;
    out->verb = phrase.verb;
    event_object_read(c, &out->verb, &phrase, &out->other);
    return true;
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
    out->other = (struct who){.kind = WHO_NONE};
    return guard_read(c, out);
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
