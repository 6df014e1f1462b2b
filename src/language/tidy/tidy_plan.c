/* SPDX-License-Identifier: MIT */
/* tidy_plan: the lines of a practice and of what was charted in their one form. */
#include "language/syntax/chars.h"
#include "language/tidy/tidy_form.h"

static void put_minutes(struct strbuf *out, double minutes)
{
    strbuf_number(out, minutes, 2);
    strbuf_text(out, " min");
}

static void put_clock(struct strbuf *out, int clock)
{
    strbuf_print(out, "%d:%02d", clock / 60, clock % 60);
}

static void put_content(struct strbuf *out, const struct plan_form *plan)
{
    const char *word = content_word(plan->content);
    strbuf_text(out, word ? word : "");
    if (plan->text_span.end > plan->text_span.begin) {
        strbuf_text(out, word ? " " : "");
        text_quote(out, plan->text);
    }
}

static void put_extras(struct strbuf *out, const struct plan_form *plan)
{
    if (plan->groups > 0) {
        strbuf_print(out, ", groups of %d", plan->groups);
    }
    if (plan->against) {
        strbuf_text(out, ", against ");
        tidy_defense(out, plan->defense);
    }
    if (plan->contact != CONTACT_BY_RULE) {
        strbuf_text(out, plan->contact == CONTACT_YES ? ", contact" : ", no contact");
    }
    if (plan->with.size > 0) {
        strbuf_text(out, plan->kind == PLAN_STATION ? " with " : ", with ");
        text_quote(out, plan->with);
    }
}

void tidy_plan(struct strbuf *out, const struct plan_form *plan)
{
    strbuf_text(out, plan_word(plan->kind));
    strbuf_text(out, plan->kind == PLAN_ITEM ? "" : " ");
    switch (plan->kind) {
    case PLAN_STARTS:
    case PLAN_ENDS:
        put_clock(out, plan->clock);
        break;
    case PLAN_LASTS:
        put_minutes(out, plan->minutes);
        break;
    case PLAN_ABOUT:
    case PLAN_LINEUP:
        text_quote(out, plan->text);
        break;
    case PLAN_STATIONS:
        put_minutes(out, plan->minutes);
        strbuf_text(out, ", change every ");
        put_minutes(out, plan->change);
        break;
    case PLAN_STATION:
        text_quote(out, plan->station);
        strbuf_char(out, ' ');
        put_content(out, plan);
        put_extras(out, plan);
        break;
    case PLAN_ITEM:
        put_minutes(out, plan->minutes);
        strbuf_char(out, ' ');
        put_content(out, plan);
        put_extras(out, plan);
        break;
    }
}

void tidy_row(struct strbuf *out, const struct row_form *row)
{
    text_quote(out, row->play);
    if (row->kind == ROW_POINTS) {
        strbuf_print(out, " points %d in %d", row->made, row->of);
    } else if (row->kind == ROW_READ) {
        strbuf_text(out, " read ");
        text_quote(out, row->word);
        strbuf_print(out, " %d of %d", row->made, row->of);
    } else {
        strbuf_print(out, " %.*s %d of %d", STR_ARG(row->word), row->made, row->of);
    }
    if (row->player > 0) {
        strbuf_print(out, " by %d", row->player);
    } else if (row->by.size > 0) {
        strbuf_text(out, " by ");
        text_quote(out, row->by);
    }
}
