/* SPDX-License-Identifier: MIT */
/* tidy_sentence: the one written form of a sentence and of its parts, printed from the same tables
 * that read them. Knows words only: no positions, no timing. */
#include "language/tidy/tidy.h"
#include "language/words/vocabulary.h"

static void print_number(struct strbuf *out, double value)
{
    strbuf_number(out, value, 3);
}

static void print_measure(struct strbuf *out, struct measure measure)
{
    static const char *const units[] = {[UNIT_NONE] = "",
                                        [UNIT_FEET] = " ft",
                                        [UNIT_METRES] = " m",
                                        [UNIT_STEPS] = " steps",
                                        [UNIT_SECONDS] = " s",
                                        [UNIT_MINUTES] = " min",
                                        [UNIT_DEGREES] = " degrees",
                                        [UNIT_PERCENT] = "%"};
    bool one_step = measure.unit == UNIT_STEPS && measure.value <= 1 && measure.value >= 1;
    print_number(out, measure.value);
    strbuf_text(out, one_step ? " step" : units[measure.unit]);
}

/* Which spots are said with `the`. */
static bool spot_has_article(const struct place *place)
{
    switch (place->side) {
    case SIDE_BALL:
    case SIDE_WEAK:
    case SIDE_OPPOSITE:
        return true;
    default:
        break;
    }
    switch (place->spot) {
    case SPOT_RIM:
    case SPOT_FRONT_OF_RIM:
    case SPOT_NAIL:
    case SPOT_LANE:
    case SPOT_FREE_THROW_LINE:
    case SPOT_BASELINE:
    case SPOT_SIDELINE:
        return true;
    default:
        return false;
    }
}

static void print_spot(struct strbuf *out, const struct place *place, bool subject)
{
    if (subject || spot_has_article(place)) {
        strbuf_text(out, "the ");
    }
    if (place->backcourt) {
        strbuf_text(out, "backcourt ");
    }
    if (place->side != SIDE_NONE) {
        strbuf_print(out, "%s ", entry_words(side_entries, (int)place->side));
    }
    strbuf_text(out, entry_words(spot_entries, (int)place->spot));
}

static void print_side(struct strbuf *out, enum side side)
{
    bool whole = side == SIDE_BALL || side == SIDE_WEAK;
    strbuf_print(out, "the %s%s", entry_words(side_entries, (int)side), whole ? "" : " side");
}

static void print_owner(struct strbuf *out, const struct who *who)
{
    tidy_who(out, who);
    strbuf_text(out, "'s");
}

static void print_offset(struct strbuf *out, const struct place *place)
{
    print_measure(out, place->length);
    strbuf_print(out, " %s ", entry_words(direction_entries, (int)place->direction));
    if (place->a) {
        tidy_place(out, place->a);
    } else {
        tidy_who(out, &place->who);
    }
}

static void print_pair(struct strbuf *out, const struct place *place, const char *before,
                       const char *between)
{
    strbuf_print(out, "%s ", before);
    tidy_place(out, place->a);
    strbuf_print(out, " %s ", between);
    tidy_place(out, place->b);
}

static void print_xy(struct strbuf *out, const struct place *place)
{
    strbuf_char(out, '(');
    print_number(out, place->x);
    strbuf_text(out, ", ");
    print_number(out, place->y);
    strbuf_char(out, ')');
}

static void print_near(struct strbuf *out, const char *before, const struct who *who,
                       const char *behind)
{
    strbuf_text(out, before);
    tidy_who(out, who);
    strbuf_text(out, behind);
}

void tidy_place(struct strbuf *out, const struct place *place)
{
    switch (place->kind) {
    case PLACE_NONE:
        break;
    case PLACE_SPOT:
        print_spot(out, place, false);
        break;
    case PLACE_SIDE:
        print_side(out, place->side);
        break;
    case PLACE_NEXT:
        strbuf_print(out, "the next spot %s", entry_words(way_entries, (int)place->way));
        break;
    case PLACE_OFFSET:
        print_offset(out, place);
        break;
    case PLACE_HALFWAY:
        print_pair(out, place, "halfway between", "and");
        break;
    case PLACE_FRACTION:
        print_pair(out, place, entry_words(fraction_entries, (int)(place->fraction * 12 + 0.5)),
                   "to");
        break;
    case PLACE_XY:
        print_xy(out, place);
        break;
    case PLACE_SPOT_OF:
        print_owner(out, &place->who);
        strbuf_text(out, " spot");
        break;
    case PLACE_WHERE:
        print_near(out, "where ", &place->who, " is");
        break;
    case PLACE_BESIDE:
        print_near(out, "beside ", &place->who, "");
        break;
    case PLACE_BEHIND:
        print_near(out, "behind ", &place->who, "");
        break;
    case PLACE_END_OF_LINE:
        strbuf_text(out, "the end of the line");
        break;
    case PLACE_OUT:
        strbuf_text(out, "out of bounds at ");
        tidy_place(out, place->a);
        break;
    case PLACE_CONE:
        strbuf_print(out, "cone %c", 'A' + place->cone);
        break;
    }
}

static void print_defender_of(struct strbuf *out, const struct who *who)
{
    if (who->role.size > 0) {
        strbuf_print(out, "%.*s's defender", STR_ARG(who->role));
    } else {
        strbuf_print(out, "%d's defender", who->number);
    }
}

void tidy_who(struct strbuf *out, const struct who *who)
{
    switch (who->kind) {
    case WHO_NONE:
        break;
    case WHO_PLAYER:
        strbuf_print(out, "%d", who->number);
        break;
    case WHO_DEFENDER:
        strbuf_print(out, "x%d", who->number);
        break;
    case WHO_DEFENDER_OF:
        print_defender_of(out, who);
        break;
    case WHO_ROLE:
        strbuf_add(out, who->role);
        break;
    case WHO_COACH:
        strbuf_text(out, "coach");
        break;
    case WHO_BALL:
        strbuf_text(out, "the ball");
        break;
    case WHO_SPOT:
        tidy_place(out, who->place);
        break;
    case WHO_EVERYONE_ELSE:
        strbuf_text(out, "everyone else");
        break;
    }
}

/* Somebody who acts: a spot takes `the`. */
static void print_actor(struct strbuf *out, const struct who *who)
{
    if (who->kind == WHO_SPOT && who->place->kind == PLACE_SPOT) {
        print_spot(out, who->place, true);
    } else {
        tidy_who(out, who);
    }
}

static void print_state(struct strbuf *out, const struct event *event, const char *words)
{
    tidy_who(out, &event->subject);
    strbuf_print(out, " %s", words);
    if (event->object.kind != WHO_NONE) {
        strbuf_char(out, ' ');
        tidy_who(out, &event->object);
    }
}

/* Whether only its `off` tells this verb from another: dribbles off, comes off. */
static bool is_told_by_off(enum verb verb)
{
    for (int i = 0; i < VERB_COUNT; i++) {
        if (verb_sibling((enum verb)i, "off") == verb) {
            return true;
        }
    }
    return false;
}

static void print_object(struct strbuf *out, enum verb verb, const struct who *object)
{
    struct slot slots[SLOTS_MOST] = {{.letter = 0}};
    size_t count = verb_slots(verb, slots);
    if (object->kind == WHO_NONE) {
        strbuf_text(out, is_told_by_off(verb) ? " off" : "");
        return;
    }
    if (count == 0) {
        return;
    }
    if (slots[0].preposition.size > 0) {
        strbuf_char(out, ' ');
        strbuf_add(out, slots[0].preposition);
    }
    strbuf_char(out, ' ');
    tidy_who(out, object);
}

void tidy_event(struct strbuf *out, const struct event *event)
{
    switch (event->kind) {
    case EVENT_NONE:
        break;
    case EVENT_VERB:
        print_actor(out, &event->subject);
        strbuf_char(out, ' ');
        strbuf_add(out, event->family == FAMILY_MOVES
                            ? STR("moves")
                            : phrase_words(event->verb, event->pass, event->screen, false));
        print_object(out, event->verb, &event->object);
        break;
    case EVENT_CATCHES:
        print_actor(out, &event->subject);
        strbuf_text(out, " catches");
        break;
    case EVENT_OPEN:
        print_state(out, event, "is open");
        break;
    case EVENT_COVERED:
        print_state(out, event, "is covered");
        break;
    case EVENT_DENIED:
        print_state(out, event, "is denied");
        break;
    case EVENT_PAST:
        print_state(out, event, "is past");
        break;
    case EVENT_HAS_BALL:
        print_state(out, event, "has the ball");
        break;
    }
}

static void print_seconds(struct strbuf *out, double seconds)
{
    print_measure(out, (struct measure){.value = seconds, .unit = UNIT_SECONDS});
}

static void print_clause(struct strbuf *out, const struct tie *tie)
{
    static const char *const words[] = {
        [TIE_AS] = "as ", [TIE_AFTER] = "after ", [TIE_WHEN] = "when ", [TIE_WHILE] = "while "};
    switch (tie->word) {
    case TIE_NONE:
        return;
    case TIE_AT:
        strbuf_text(out, "at ");
        print_seconds(out, tie->seconds);
        return;
    case TIE_LATER:
        print_seconds(out, tie->seconds);
        strbuf_text(out, " later");
        return;
    case TIE_SECONDS_AFTER:
        print_seconds(out, tie->seconds);
        strbuf_text(out, " after ");
        break;
    default:
        strbuf_text(out, words[tie->word]);
        break;
    }
    tidy_event(out, tie->event);
}

void tidy_tie(struct strbuf *out, const struct tie *tie)
{
    if (tie->then) {
        strbuf_text(out, tie->word == TIE_NONE ? "then " : "then, ");
    }
    if (tie->meanwhile) {
        strbuf_text(out, "meanwhile ");
    }
    if (tie->word != TIE_NONE) {
        print_clause(out, tie);
        strbuf_text(out, ", ");
    }
}

static void print_subject(struct strbuf *out, const who_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        if (i > 0) {
            strbuf_text(out, i + 1 == list->count ? " and " : ", ");
        }
        print_actor(out, &list->at[i]);
    }
}

static bool place_needs_preposition(const struct place *place)
{
    return place->kind != PLACE_BESIDE && place->kind != PLACE_BEHIND && place->kind != PLACE_OUT;
}

static void print_preposition(struct strbuf *out, const struct slot *slot)
{
    if (slot->preposition.size > 0) {
        strbuf_print(out, " %.*s", STR_ARG(slot->preposition));
    }
    strbuf_char(out, ' ');
}

static void print_place_slot(struct strbuf *out, const struct sentence *s, const struct slot *slot)
{
    if (slot->letter == 'E' && !s->place && s->object.kind != WHO_NONE) {
        print_preposition(out, slot);
        tidy_who(out, &s->object);
        return;
    }
    if (!s->place) {
        return;
    }
    bool to = str_is(slot->preposition, "to") || str_is(slot->preposition, "at");
    if (to && !place_needs_preposition(s->place)) {
        strbuf_char(out, ' ');
    } else {
        print_preposition(out, slot);
    }
    tidy_place(out, s->place);
}

static void print_player_slot(struct strbuf *out, const struct sentence *s, const struct slot *slot)
{
    if (s->object.kind == WHO_NONE) {
        return;
    }
    print_preposition(out, slot);
    tidy_who(out, &s->object);
    if (s->object2) {
        strbuf_text(out, " and ");
        tidy_who(out, s->object2);
    }
}

static void print_path(struct strbuf *out, const struct sentence *s, bool along)
{
    static const char *const words[] = {
        [PATH_NONE] = "",         [PATH_AROUND] = " around ", [PATH_OVER] = " over ",
        [PATH_UNDER] = " under ", [PATH_PAST] = " past ",     [PATH_ALONG] = " along "};
    if (s->path == PATH_NONE || (s->path == PATH_ALONG) != along) {
        return;
    }
    strbuf_text(out, words[s->path]);
    if (s->path_place) {
        tidy_place(out, s->path_place);
    } else {
        tidy_who(out, s->path_who);
    }
}

static void print_length(struct strbuf *out, struct measure measure, const struct slot *slot)
{
    if (measure.unit != UNIT_NONE) {
        print_preposition(out, slot);
        print_measure(out, measure);
    }
}

static void print_slot(struct strbuf *out, const struct sentence *s, const struct slot *slot)
{
    switch (slot->letter) {
    case 'W':
    case 'U':
    case 'D':
        print_player_slot(out, s, slot);
        break;
    case 'O':
        if (s->on) {
            print_preposition(out, slot);
            tidy_who(out, s->on);
        }
        break;
    case 'P':
    case 'E':
        print_place_slot(out, s, slot);
        break;
    case 'T':
        print_length(out, s->duration, slot);
        break;
    case 'L':
        print_length(out, s->length, slot);
        break;
    case 'R':
    case 'A':
        print_path(out, s, slot->letter == 'A');
        break;
    default:
        if (s->drive != DRIVE_FREE) {
            static const char *const ways[] = {[DRIVE_BASELINE] = " baseline",
                                               [DRIVE_MIDDLE] = " middle",
                                               [DRIVE_LEFT] = " left",
                                               [DRIVE_RIGHT] = " right"};
            strbuf_text(out, ways[s->drive]);
        }
        break;
    }
}

static void print_face(struct strbuf *out, const struct sentence *s)
{
    if (s->face == FACE_NONE) {
        return;
    }
    strbuf_text(out, s->face == FACE_TO ? ", facing " : ", back to ");
    if (s->face_place) {
        tidy_place(out, s->face_place);
    } else {
        tidy_who(out, s->face_who);
    }
}

static void print_modifiers(struct strbuf *out, const struct sentence *s)
{
    print_face(out, s);
    if (s->width != WIDTH_NORMAL) {
        strbuf_text(out, s->width == WIDTH_WIDE ? ", wide" : ", tight");
    }
    if (s->early) {
        strbuf_text(out, ", early");
    }
    if (s->pace != PACE_VERB) {
        strbuf_print(out, ", %s", entry_words(pace_entries, (int)s->pace));
    }
    if (s->taking.unit != UNIT_NONE) {
        strbuf_text(out, ", taking ");
        print_measure(out, s->taking);
    }
}

void tidy_sentence(struct strbuf *out, const struct sentence *s)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(s->verb, slots);
    tidy_tie(out, &s->tie);
    print_subject(out, &s->subject);
    strbuf_char(out, ' ');
    strbuf_add(out, phrase_words(s->verb, s->pass, s->screen, s->bare));
    if (s->begins) {
        strbuf_text(out, " from ");
        tidy_place(out, s->begins);
    }
    for (size_t i = 0; i < count; i++) {
        print_slot(out, s, &slots[i]);
    }
    print_modifiers(out, s);
    if (s->until) {
        strbuf_text(out, " until ");
        tidy_event(out, s->until);
    }
}

void tidy_condition(struct strbuf *out, const struct condition *condition)
{
    if (condition->kind == COND_OTHERWISE) {
        strbuf_text(out, "otherwise");
        return;
    }
    tidy_who(out, &condition->who);
    switch (condition->kind) {
    case COND_BOTH:
        strbuf_text(out, " and ");
        tidy_who(out, &condition->other);
        strbuf_char(out, ' ');
        strbuf_add(out, verb_head(condition->verb, true));
        print_object(out, condition->verb, &condition->object);
        break;
    case COND_OPEN:
        strbuf_text(out, " is open");
        break;
    case COND_COVERED:
        strbuf_text(out, " is covered");
        break;
    case COND_DENIED:
        strbuf_text(out, " is denied");
        break;
    default:
        strbuf_char(out, ' ');
        strbuf_add(out, verb_head(condition->verb, false));
        print_object(out, condition->verb, &condition->other);
        break;
    }
    if (condition->place) {
        strbuf_text(out, " to ");
        tidy_place(out, condition->place);
    }
}
