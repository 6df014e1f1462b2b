/* SPDX-License-Identifier: MIT */
/* plan_words: a practice's items and sums in a coach's words, for any page. */
#include "floor/season/season.h"

struct str plan_minutes(struct arena *arena, double minutes)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_number(&out, minutes, 1);
    return strbuf_str(&out);
}

struct str plan_time(struct arena *arena, double at, bool twelve_hours)
{
    enum { HOUR = 60, DAY = 24 * HOUR };
    int minutes = (int)(at + 0.5) % DAY, hour = minutes / HOUR;
    if (twelve_hours) {
        hour = hour % 12 == 0 ? 12 : hour % 12;
    }
    return str_format(arena, "%d:%02d", hour, minutes % HOUR);
}

struct str plan_before(void)
{
    return STR("Floor dry. AED, phone and injured list checked.");
}

struct str plan_caution(int line)
{
    static const char *const lines[PLAN_CAUTION_LINES] = {
        "Walk it first; less contact for young players; screen with feet still, elbows in. Drink "
        "when thirsty; in heat, cut back, rest or stop.",
        "Head hit, faint or chest pain: stop, get help, out until medically cleared. Local rules, "
        "league, medical staff come before this plan."};
    return str_of(lines[line]);
}

static size_t count_screens(const struct step *step)
{
    int branch = step->tasks.count > 0 || step->branches.count == 0 ? -1 : branch_told(step, 0);
    size_t count = 0;
    for (size_t i = 0; i < step_task_count(step, branch); i++) {
        count += step_task(step, branch, i)->kind == TASK_SCREEN;
    }
    return count;
}

size_t plan_step(const struct play *play)
{
    size_t best = 0, most = 0;
    for (size_t i = 0; i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        if (step->branches.count > 0 && step->branches.at[0].kind == BRANCH_READ) {
            return i;
        }
        size_t screens = count_screens(step);
        if (screens > most) {
            best = i;
            most = screens;
        }
    }
    return best;
}

bool plan_is_undefended(const struct plan_item *item, size_t step)
{
    const struct play *play = item->play;
    return !item->contact && item->against.size == 0 && play && !play->is_drill &&
           (step >= play->steps.count || count_screens(&play->steps.at[step]) == 0);
}

static void add_part(struct strbuf *out, const char *before, struct str part)
{
    strbuf_print(out, "%s%s%.*s", out->size > 0 ? ", " : "", before, STR_ARG(part));
}

struct str plan_how(struct arena *arena, const struct plan_item *item, plan_name *name)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    if (item->content == CONTENT_COUNT) {
        strbuf_print(&out, "Change every %.*s\xC2\xA0min",
                     STR_ARG(plan_minutes(arena, item->change)));
    }
    if (item->groups > 0) {
        strbuf_print(&out, "Groups of\xC2\xA0%d", item->groups);
    }
    if (item->with.size > 0) {
        add_part(&out, out.size > 0 ? "with " : "With ", name(arena, item->with));
    }
    if (item->contact) {
        add_part(&out, "", out.size > 0 ? STR("contact") : STR("Contact"));
    } else if (item->passive) {
        add_part(&out, "", out.size > 0 ? STR("no contact") : STR("No contact"));
    }
    return strbuf_str(&out);
}

struct str plan_what(struct arena *arena, const struct plan_item *item, plan_name *name)
{
    static const char *const called[CONTENT_COUNT + 1] = {[CONTENT_WARM_UP] = "Warm-up",
                                                          [CONTENT_COOL_DOWN] = "Cool-down",
                                                          [CONTENT_WATER] = "Water",
                                                          [CONTENT_TALK] = "Talk",
                                                          [CONTENT_COUNT] = "Stations"};
    struct strbuf out;
    strbuf_init(&out, arena);
    const char *word = called[item->content];
    strbuf_text(&out, word ? word : "");
    if (item->text.size > 0) {
        struct str text = item->play ? item->play->name : item->text;
        strbuf_print(&out, "%s%.*s", word ? ": " : "", STR_ARG(name(arena, text)));
    }
    if (item->against.size > 0) {
        strbuf_print(&out, " against %.*s", STR_ARG(item->against));
    }
    return strbuf_str(&out);
}

static void add_minutes(struct strbuf *out, const char *before, double minutes, const char *behind)
{
    strbuf_print(out, "%s%.*s\xC2\xA0min%s", before, STR_ARG(plan_minutes(out->arena, minutes)),
                 behind);
}

const char *plan_count(struct arena *arena, size_t count)
{
    static const char *const words[] = {"no",   "one", "two",   "three", "four",
                                        "five", "six", "seven", "eight", "nine"};
    return count < sizeof words / sizeof *words ? words[count] : str_format(arena, "%zu", count).at;
}

struct str plan_sums_told(struct arena *arena, const struct practice *practice)
{
    struct practice_sums sums = practice_sum(practice);
    double over = practice->planned - practice->booked;
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_text(&out, "In all");
    if (practice->booked <= 0) {
        strbuf_text(&out, ". ");
    } else if (over > 1e-9) {
        add_minutes(&out, ": ", over, " more than the time booked. ");
    } else if (over < -1e-9) {
        add_minutes(&out, ": ", -over, " of the time booked are free. ");
    } else {
        strbuf_text(&out, ": fits the time booked. ");
    }
    if (sums.blocks == 0) {
        strbuf_text(&out, "No contact. ");
    } else {
        add_minutes(&out, "Contact ", sums.contact, "");
        strbuf_print(&out, " in %d block%s", sums.blocks, sums.blocks == 1 ? "" : "s");
        if (sums.row.blocks > 1) {
            bool all = (int)sums.row.blocks == sums.blocks;
            strbuf_print(&out, ", %s back to back",
                         all && sums.blocks > 2 ? "all" : plan_count(arena, sums.row.blocks));
            if (!all) {
                add_minutes(&out, " for ", sums.row.minutes, "");
            }
        } else if (sums.blocks > 1) {
            strbuf_text(&out, ", none back to back");
        }
        strbuf_text(&out, ". ");
    }
    add_minutes(&out, "Longest gap between water breaks: ", sums.dry, ".");
    return strbuf_str(&out);
}

struct str plan_warned(struct arena *arena, const struct practice *practice)
{
    const double whole = 0.01; /* of a minute */
    struct practice_sums sums = practice_sum(practice);
    bool dry = sums.dry > practice->dry + whole, load = sums.row.blocks > 1;
    struct strbuf out;
    strbuf_init(&out, arena);
    if (dry || load) {
        strbuf_text(&out, "Look at this again: ");
    }
    if (dry) {
        add_minutes(&out, "", sums.dry, " without water");
    }
    if (load) {
        strbuf_print(&out, "%s%s blocks with contact back to back", dry ? "; " : "",
                     plan_count(arena, sums.row.blocks));
    }
    strbuf_text(&out, dry || load ? "." : "");
    return strbuf_str(&out);
}
