/* SPDX-License-Identifier: MIT */
/* check: what a good assistant would see in a run. Each check is a row and a function over const
 * input; the order of checks does not change what is found. */
#ifndef JUDGE_CHECK_CHECK_H
#define JUDGE_CHECK_CHECK_H

#include "floor/sim/run.h"

struct checker; /* what one check gets: the run, and where to report */

struct check_row {
    const char *id;         /* "space.close" */
    enum severity severity; /* the highest it reports */
    const char *what;       /* one line: when it fires */
    const char *why;        /* the explanation, a coach's words */
    const char *good, *bad; /* a short play each, for explain; may be NULL for errors */
    const char *source;     /* rulebook article, clinic, or "common practice, no source" */
    const char *unit;       /* of its limit: "ft", "s", "" */
    double limit;           /* default, metres, seconds or radians; 0: none */
    bool lasting;           /* of a state that goes on from step to step: said once */
    void (*look)(struct checker *checker);
};
size_t check_count(void);
const struct check_row *check_at(size_t index); /* in alphabetical order */
const struct check_row *check_find(struct str id);

/* A limit of the rulebooks, by the rules in force: its article, and where that was read. */
struct check_rule {
    const char *id;
    enum court_code rules;
    size_t field; /* of the court's row */
    const char *source;
};
const struct check_rule *check_rule(const struct check_row *row,
                                    enum court_code code); /* NULL: its limit is no rule's */
double check_rule_seconds(const struct check_rule *rule);  /* 0: these rules set none */

/* What to draw of a finding. */
enum mark_kind {
    MARK_NONE,
    MARK_DISTANCE /* between a and b */,
    MARK_POINT /* at a */,
    MARK_LANE /* a to b */,
    MARK_ANGLE /* at a, between the ways to b and to c */
};
/* Round an attacker's number in `marked`, which no text of a coach can hold; as TELL_BOLD. */
#define CHECK_BODY_ON '\x01'
#define CHECK_BODY_OFF '\x02'

struct finding {
    const struct check_row *row;
    enum severity severity;
    int step, branch;     /* indices; branch -1 */
    double time;          /* seconds of the segment */
    body who[4];          /* BODY_NONE-ended when fewer */
    double amount, limit; /* metres, seconds or radians; as the row's unit */
    struct str message,
        help; /* "4: stay low in the corner. 2 and 4 stand 9 ft apart; keep 12 ft or more." */
    struct str marked; /* the message with marks round the players' numbers */
    struct span span;  /* the sentence it is about */
    enum mark_kind mark;
    struct vec2 a, b, c;
    bool accepted;
    struct str reason; /* of the accept */
};
typedef VEC(struct finding) finding_list;
/* Is it listed and lettered with this diagram? What is accepted is not. */
bool finding_is_of(const struct finding *finding, int step, int branch);
/* Reports the checks that a play's `limit` and `accept` lines name when they are not of the table,
 * are not built yet, or take another unit. */
void check_names(const struct play *play, struct diags *diags);
/* The same matter, seen in a play and in its exact mirror image. */
bool check_same(const struct finding *one, const struct finding *mirrored);
/* Sorted by step, branch, time, id. */
void check_run(struct arena *arena, const struct run *run, finding_list *findings);
/* The same, the checks run in another order: every index of the table once, or NULL for its own. */
void check_run_in(struct arena *arena, const struct run *run, const size_t *order,
                  finding_list *findings);
/* What the checks named in `ids` (NULL ends them) find in one segment alone, such as a step run
 * again by other players. Not sorted. */
void check_again(struct arena *arena, const struct segment *segment, const char *const ids[],
                 finding_list *findings);

#endif
