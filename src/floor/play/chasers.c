/* SPDX-License-Identifier: MIT */
/* chasers: who of a box-and-one or a triangle-and-two plays a man, and whom; and what is wrong with
 * the lines that say so: too many of them, two on one player, none. Takes the play's zone and the
 * lines; must not know sentences. */
#include "floor/play/resolve.h"

bool man_is_guarded(const struct play *play, body man, body but)
{
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (x != but && play->guards[x] == man) {
            return true;
        }
    }
    return false;
}

/* The first player on whom nobody else is. */
static body first_free(const struct play *play, body x)
{
    body man = 0;
    while (man < BODY_COACH && (!play->start[man].on_floor || man_is_guarded(play, man, x))) {
        man++;
    }
    return man < BODY_COACH ? man : (body)BODY_NONE;
}

static void say_taken(struct maker *m, body x)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_CHASER_TAKEN, m->play->span,
                 "%s: no line says whom x%d guards, so it is %d", zone_row(m->play->zone)->setting,
                 body_number(x), body_number(m->play->guards[x]));
    diag_help(m->diags, diag, "write before the first step: x%d guards 3", body_number(x));
}

static void say_extra(struct maker *m, const struct form *form, body x, bool one)
{
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_CHASERS, form->span,
                                 "in a %s %s a man, and x%d is not: the others have areas",
                                 zone_row(m->play->zone)->setting,
                                 one ? "x1 guards" : "x1 and x2 guard", body_number(x));
    diag_help(m->diags, diag, "write: %s guards %d; %s", one ? "x1" : "x1 or x2",
              body_number(m->play->guards[x]),
              one ? "two who guard a man are a defense triangle-and-two"
                  : "with three who do, write defense man");
}

static void say_same(struct maker *m, const struct form *form, body man)
{
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_CHASERS, form->span,
                 "both guard %d: a triangle-and-two has two players to guard", body_number(man));
    diag_help(m->diags, diag, "name another player, or write defense box-and-one");
}

void chasers_set(struct maker *m, const struct form *const said[BODY_COUNT])
{
    struct play *play = m->play;
    bool one = !zone_is_man(play->zone, 1);
    body first = body_defender(1), second = body_defender(2);
    for (int k = 0; k < ZONE_DEFENDERS && zone_is_man(play->zone, k); k++) {
        body x = body_defender(k + 1);
        if (!said[x]) {
            play->guards[x] = first_free(play, x);
        }
        if (!said[x] && play->guards[x] != BODY_NONE) {
            say_taken(m, x);
        }
    }
    for (int k = 0; k < ZONE_DEFENDERS && zone_is_man(play->zone, 0); k++) {
        body x = body_defender(k + 1);
        if (said[x] && !zone_is_man(play->zone, k)) {
            say_extra(m, said[x], x, one);
        }
    }
    if (said[first] && said[second] && !one && play->guards[first] == play->guards[second]) {
        say_same(m, said[second], play->guards[second]);
    }
}
