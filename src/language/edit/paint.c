/* SPDX-License-Identifier: MIT */
/* paint: see paint.h. Later strokes lie over earlier ones: a player inside a place inside a
 * clause. */
#include "language/edit/paint.h"

#include <string.h>

struct painter {
    const struct edit_text *text;
    struct painted *out;
};

static bool is_here(const struct painter *p, struct span span)
{
    return span.source == p->text->source && span.begin < span.end && span.end <= p->out->size;
}

static void put(struct painter *p, struct span span, enum edit_class class)
{
    if (is_here(p, span)) {
        memset(p->out->class + span.begin, (int)class, span.end - span.begin);
    }
}

static void name(struct painter *p, struct span span, const char *words, enum edit_class class)
{
    struct painted *out = p->out;
    if (!is_here(p, span)) {
        return;
    }
    if (out->name_count == out->name_room) {
        size_t room = out->name_room ? out->name_room * 2 : 32;
        out->names = arena_grow(p->text->arena, out->names, out->name_count * sizeof *out->names,
                                room * sizeof *out->names);
        out->name_room = room;
    }
    out->names[out->name_count].span = span;
    out->names[out->name_count].name = words;
    out->names[out->name_count++].class = class;
}

static void put_place(struct painter *p, const struct place *place);

static void put_who(struct painter *p, const struct who *who)
{
    switch (who->kind) {
    case WHO_NONE:
        break;
    case WHO_DEFENDER:
    case WHO_DEFENDER_OF:
        put(p, who->span, EDIT_DEFENDER);
        break;
    case WHO_SPOT:
        put_place(p, who->place);
        break;
    default:
        put(p, who->span, EDIT_PLAYER);
        break;
    }
}

static void put_place(struct painter *p, const struct place *place)
{
    if (!place) {
        return;
    }
    put(p, place->span, EDIT_PLACE);
    if (place->kind == PLACE_SPOT) {
        name(p, place->span, spot_row(place->spot)->word, EDIT_PLACE);
    }
    put_who(p, &place->who);
    put_place(p, place->a);
    put_place(p, place->b);
}

static void put_event(struct painter *p, const struct event *event)
{
    if (event) {
        put(p, event->span, EDIT_VERB);
        if (event->kind == EVENT_VERB) {
            name(p, event->span, verb_row(event->verb)->words, EDIT_VERB);
        }
        put_who(p, &event->subject);
        put_who(p, &event->object);
    }
}

static void put_sentence(struct painter *p, const struct sentence *s)
{
    put(p, s->tie.span, EDIT_TIE);
    put_event(p, s->tie.event);
    put(p, s->verb_span, EDIT_VERB);
    name(p, s->verb_span, verb_row(s->verb)->words, EDIT_VERB);
    for (size_t i = 0; i < s->subject.count; i++) {
        put_who(p, &s->subject.at[i]);
    }
    put_place(p, s->place);
    put_place(p, s->path_place);
    put_place(p, s->face_place);
    const struct who *whos[] = {&s->object, s->object2, s->on, s->path_who, s->face_who};
    for (size_t i = 0; i < sizeof whos / sizeof *whos; i++) {
        if (whos[i]) {
            put_who(p, whos[i]);
        }
    }
    put_event(p, s->until);
}

static void put_condition(struct painter *p, const struct condition *condition)
{
    put(p, condition->span, condition->kind == COND_OTHERWISE ? EDIT_TIE : EDIT_VERB);
    if (condition->kind == COND_VERB || condition->kind == COND_BOTH) {
        name(p, condition->span, verb_row(condition->verb)->words, EDIT_VERB);
    }
    put_place(p, condition->place);
    put_who(p, &condition->who);
    put_who(p, &condition->other);
    put_who(p, &condition->object);
}

static void put_setting(struct painter *p, const struct setting_form *setting)
{
    bool own = setting->text.size > 0 || setting->tags.count > 0;
    put(p, setting->value_span, own ? EDIT_QUOTED : EDIT_VALUE);
    for (size_t i = 0; i < setting->placings.count; i++) {
        const struct placing *placing = &setting->placings.at[i];
        if (placing->kind != PLACING_FORMATION) {
            put_place(p, placing->place);
            put_who(p, &placing->who);
        }
    }
    put_who(p, &setting->ball);
    put_place(p, setting->ball_out);
}

static void put_note(struct painter *p, const struct note_form *note)
{
    for (size_t i = 0; i < note->roles.count; i++) {
        put_who(p, &note->roles.at[i].who);
    }
}

/* The coach's own words lie over what the line is made of. */
static void put_plan(struct painter *p, const struct form *form)
{
    const struct token *first = form->line->tokens;
    put(p, form->span, EDIT_VALUE);
    put(p, first->span, first->kind == TOKEN_MEASURE ? EDIT_MEASURE : EDIT_SETTING);
    put(p, form->plan->text_span, EDIT_QUOTED);
    put(p, form->plan->with_span, EDIT_QUOTED);
}

static void put_block(struct painter *p, const struct block *block);

static void put_form(struct painter *p, const struct form *form)
{
    switch (form->kind) {
    case FORM_SENTENCE:
        put_sentence(p, form->sentence);
        break;
    case FORM_SETTING:
        put_setting(p, form->setting);
        break;
    case FORM_STANDING:
        put_who(p, &form->standing->defender);
        put_who(p, &form->standing->player);
        break;
    case FORM_PLAN:
        put_plan(p, form);
        break;
    case FORM_ROW:
        put(p, form->row->word_span, EDIT_QUOTED);
        put(p, form->row->count_span, EDIT_VALUE);
        put(p, form->row->by_span, form->row->player > 0 ? EDIT_PLAYER : EDIT_QUOTED);
        break;
    case FORM_CHART: /* its short word is the coach's own */
        put(p, form->note->word_span, EDIT_QUOTED);
        break;
    case FORM_POINT:
    case FORM_RUN:
        put_note(p, form->note);
        break;
    case FORM_BLOCK:
        put_block(p, form->block);
        break;
    default:
        break;
    }
}

static void put_block(struct painter *p, const struct block *block)
{
    put(p, block->title_span, EDIT_QUOTED);
    put(p, block->mirrors_span, EDIT_QUOTED);
    for (size_t i = 0; i < block->conditions.count; i++) {
        put_condition(p, &block->conditions.at[i]);
    }
    put(p, block->tie.span, EDIT_TIE);
    put_event(p, block->tie.event);
    for (size_t i = 0; i < block->forms.count; i++) {
        put_form(p, &block->forms.at[i]);
    }
}

void paint_book(const struct edit_text *text, const struct book *book, const struct diags *diags,
                struct painted *out)
{
    struct painter painter = {text, out};
    out->size = text->sources->all.at[text->source].text.size;
    out->class = arena_take(text->arena, out->size);
    put_block(&painter, book->file);
    for (size_t i = 0; i < diags->all.count; i++) {
        if (diags->all.at[i].severity == SEVERITY_ERROR) {
            put(&painter, diags->all.at[i].span, EDIT_ERROR);
        }
    }
}
