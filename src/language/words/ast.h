/* SPDX-License-Identifier: MIT */
/* ast: a book as it is written, understood word by word but not yet as a play: nothing here knows
 * where anybody stands or who has the ball. Made by book_read, printed back by tidy, resolved by
 * floor/play. Everything lives in the compilation's arena; spans point into its sources. */
#ifndef LANGUAGE_WORDS_AST_H
#define LANGUAGE_WORDS_AST_H

#include "base/source.h"
#include "base/vec.h"
#include "floor/court/court.h"
#include "language/syntax/syntax.h"

struct place;

/* Who. */
enum who_kind {
    WHO_NONE,
    WHO_PLAYER,      /* number */
    WHO_DEFENDER,    /* number: x3 */
    WHO_DEFENDER_OF, /* number: 3's defender */
    WHO_ROLE,        /* role: in an action */
    WHO_COACH,
    WHO_BALL, /* whoever has it */
    WHO_SPOT, /* place: whoever stood there, alone, as the step began */
    WHO_EVERYONE_ELSE
};
struct who {
    enum who_kind kind;
    int number;
    struct str role;
    const struct place *place;
    struct span span;
};
typedef VEC(struct who) who_list;

struct measure {
    double value;
    enum unit unit; /* UNIT_NONE: not written */
};

/* Where. */
enum place_kind {
    PLACE_NONE,
    PLACE_SPOT,     /* spot, side, backcourt */
    PLACE_SIDE,     /* side: "the right side" */
    PLACE_NEXT,     /* way: "the next spot left" */
    PLACE_OFFSET,   /* length, direction, from a (place) or who */
    PLACE_HALFWAY,  /* between a and b */
    PLACE_FRACTION, /* fraction of the way from a to b */
    PLACE_XY,       /* x, y in the file's units */
    PLACE_SPOT_OF,  /* who: "3's spot" */
    PLACE_WHERE,    /* who: "where 3 is" */
    PLACE_BESIDE,   /* who */
    PLACE_BEHIND,   /* who (drills) */
    PLACE_END_OF_LINE,
    PLACE_OUT, /* "out of bounds at" a */
    PLACE_CONE /* cone: 0 is A */
};
enum direction { ABOVE, BELOW, INSIDE, OUTSIDE, LEFT_OF, RIGHT_OF, DIRECTION_COUNT };
enum way { WAY_LEFT, WAY_RIGHT, WAY_UP, WAY_DOWN };
struct place {
    enum place_kind kind;
    struct span span;
    enum spot spot;
    enum side side; /* SIDE_NONE: not written */
    bool backcourt;
    bool each; /* the corners: every one of several players has one */
    enum way way;
    struct measure length;
    enum direction direction;
    double fraction; /* 1/3, 2/3, 1/4, 3/4 */
    double x, y;
    int cone;
    struct who who;
    const struct place *a, *b;
};

/* Verbs: rows of verbs.def. */
enum verb {
#define VERB(symbol, ...) VERB_##symbol,
#include "language/words/verbs.def"
#undef VERB
    VERB_COUNT
};
enum pass_kind { PASS_PLAIN, PASS_BOUNCE, PASS_SKIP, PASS_LOB, PASS_OVERHEAD, PASS_CHEST };
enum screen_kind {
    SCREEN_PLAIN,
    SCREEN_AWAY,
    SCREEN_DOWN,
    SCREEN_BACK,
    SCREEN_CROSS,
    SCREEN_FLARE,
    SCREEN_BALL,
    SCREEN_DOUBLE
};
enum pace { PACE_VERB, PACE_WALK, PACE_JOG, PACE_RUN, PACE_SPRINT };

struct sentence;
/* When. */
enum event_kind { /* what a clause names */
                  EVENT_NONE,
                  EVENT_VERB,    /* a sentence of `subject` with `verb` (or its family) */
                  EVENT_CATCHES, /* a pass or hand-off to `subject` */
                  EVENT_OPEN,
                  EVENT_COVERED,
                  EVENT_DENIED,
                  EVENT_PAST,
                  EVENT_HAS_BALL /* states */
};
enum event_family {
    FAMILY_NONE,
    FAMILY_PASSES,
    FAMILY_SCREENS,
    FAMILY_CUTS,
    FAMILY_DRIBBLES,
    FAMILY_MOVES,
    FAMILY_DRIVES, /* with a screen or without */
    FAMILY_BACK_CUTS,
    FAMILY_USES /* comes off, whosever screen it is */
};
struct event {
    enum event_kind kind;
    struct who subject;
    enum verb verb;           /* with EVENT_VERB */
    enum event_family family; /* when the verb stands for its family */
    enum pass_kind pass;      /* with EVENT_VERB: the kind named, else plain */
    enum screen_kind screen;
    struct who object; /* WHO_NONE: not said */
    bool over;         /* while it is read: said as done, has cut; `after` says the same */
    const struct sentence *told; /* told whole, with where, and by no sentence above; else NULL */
    struct span span;
};
enum tie_word {
    TIE_NONE,
    TIE_AS,
    TIE_AFTER,
    TIE_WHEN,
    TIE_WHILE,
    TIE_SECONDS_AFTER, /* seconds after event */
    TIE_AT,            /* at seconds of the step */
    TIE_LATER          /* seconds later than the sentence above */
};
struct tie {
    bool then, meanwhile;
    enum tie_word word;
    double seconds;
    const struct event *event; /* NULL: the word takes none */
    struct span span;
};

enum path_word { PATH_NONE, PATH_AROUND, PATH_OVER, PATH_UNDER, PATH_PAST, PATH_ALONG };
struct sentence {
    struct span span;
    struct tie tie;
    who_list subject;
    bool bare; /* several subjects: the bare verb */
    enum verb verb;
    struct span verb_span;
    enum pass_kind pass;
    enum screen_kind screen;
    struct who object;          /* to, for, off, at, of */
    const struct who *object2;  /* off 4 and 5; this and what follows is rare: NULL, not written */
    const struct who *on;       /* screen on x2 */
    const struct place *place;  /* NULL: not written */
    const struct place *begins; /* where the player is before it; NULL: not written */
    enum path_word path;
    const struct who *path_who;
    const struct place *path_place;
    struct measure length;   /* sets up toward P 6 ft */
    struct measure duration; /* holds for 1 s */
    enum drive_side { DRIVE_FREE, DRIVE_BASELINE, DRIVE_MIDDLE, DRIVE_LEFT, DRIVE_RIGHT } drive;
    /* modifiers */
    enum { FACE_NONE, FACE_TO, FACE_BACK } face;
    const struct who *face_who;
    const struct place *face_place;
    enum { WIDTH_NORMAL, WIDTH_WIDE, WIDTH_TIGHT } width;
    bool early;
    const struct sentence *ahead; /* while it is read: what its receiver does before it */
    bool hands_off; /* while it is read: a hand-off follows, which becomes a sentence of its own */
    bool spread; /* while it is read: each of its players has a sentence behind it, which replace it
                  */
    bool elided; /* said without a verb: 4 to the slot */
    bool shoots; /* while it is read: a shot follows, which becomes a sentence of its own */
    bool three;  /* a shot that is called a three */
    enum pace pace;
    struct measure taking;
    const struct event *until; /* NULL: none */
};

/* What stands on one line, understood. Kinds follow grammar order. */
enum form_kind {
    FORM_BLANK,   /* only for tidy */
    FORM_COMMENT, /* only for tidy */
    FORM_BROKEN,  /* reported; skipped by everyone */
    FORM_VERSION, /* courtwright 1 */
    FORM_SETTING,
    FORM_STANDING, /* x3 guards 4, before the first step */
    FORM_SENTENCE,
    FORM_POINT,
    FORM_MISTAKE,
    FORM_CHART,
    FORM_ACCEPT,
    FORM_RUN,
    FORM_REPEAT,
    FORM_SAME,
    FORM_CONTINUE,
    FORM_ROSTER,
    FORM_LINEUP,
    FORM_PLAN, /* under practice */
    FORM_ROW,  /* under charted */
    FORM_INCLUDE,
    FORM_CHAPTER,
    FORM_BLOCK /* a heading with what it opens: see block */
};
enum setting {
#define SETTING(symbol, word, ...) SETTING_##symbol,
#include "language/words/settings.def"
#undef SETTING
    SETTING_COUNT
};
enum defense_kind {
    DEFENSE_NONE,
    DEFENSE_MAN,
    DEFENSE_ZONE,
    DEFENSE_BOX_AND_ONE,
    DEFENSE_TRIANGLE_AND_TWO,
    DEFENSE_PRESS
};
enum man_style { MAN_GAP, MAN_DENY, MAN_SAG };
struct placing {
    enum { PLACING_FORMATION, PLACING_WHO, PLACING_CONE, PLACING_LINE } kind;
    size_t formation;
    struct who who;            /* PLACING_WHO, PLACING_LINE (behind whom) */
    const struct place *place; /* WHO, CONE */
    struct span span;
};
struct setting_form {
    enum setting setting;
    struct span value_span;
    struct str text; /* about, call, series, score, caution, goal, lineup, limit's check id */
    int number; /* number; court_code, level_code, units (0 feet, 1 metres), paper (0 letter, 1 a4),
                   basket (0 top, 1 bottom), floor (0 half, 1 full) */
    struct measure measure; /* limit, clock */
    VEC(struct str) tags;
    VEC(struct placing) placings; /* start */
    struct who ball;              /* ball */
    const struct place *ball_out; /* out of bounds at */
    enum defense_kind defense;
    enum man_style man;
    bool man_written;
    struct str zone; /* "2-3"; empty with DEFENSE_PRESS: press man */
};
struct role_binding {
    struct str role;
    struct who who;
};
struct note_form { /* point, mistake, chart, accept, run, repeat, same */
    int player;    /* point: 0 for all */
    struct str word,
        text; /* chart's short word; accept's check id in word; run and same: name in text */
    struct span word_span, text_span;
    VEC(struct role_binding) roles;
    bool mirrored;
    int step; /* repeat, same */
};
/* A line of a practice plan. */
enum plan_kind {
    PLAN_STARTS,
    PLAN_ENDS,
    PLAN_LASTS,
    PLAN_ABOUT,
    PLAN_LINEUP,
    PLAN_ITEM,
    PLAN_STATIONS,
    PLAN_STATION
};
enum content_kind {
    CONTENT_TEXT, /* the coach's own words, in `text` */
#define CONTENT(symbol, ...) CONTENT_##symbol,
#include "language/words/contents.def"
#undef CONTENT
    CONTENT_COUNT
};
enum contact { CONTACT_BY_RULE, CONTACT_YES, CONTACT_NO };
struct plan_form {
    enum plan_kind kind;
    int clock;                 /* starts, ends: minutes after midnight */
    double minutes;            /* lasts, an item, stations */
    double change;             /* stations: minutes at each */
    enum content_kind content; /* an item, a station */
    struct str station;        /* its name */
    struct str text;           /* about, lineup; a content's name or words: may be empty */
    int groups;                /* players in each: 0 not written */
    bool against;              /* a defense is written: */
    struct setting_form *defense;
    enum contact contact;
    struct str with; /* a line-up, or who of the coach's own words; empty: not written */
    struct span text_span, with_span;
};

/* A row under charted: what was counted. */
struct row_form {
    enum { ROW_CHART, ROW_READ, ROW_POINTS } kind;
    struct str play, word; /* word: of a `chart` line, or the name of a read */
    struct span play_span, word_span, count_span;
    int made, of; /* 7 of 12; points 14 in 12 */
    int player;   /* 0: by name, or not said */
    struct str by;
    struct span by_span;
};

struct standing {
    struct who defender, player;
};
struct roster_form {
    struct str role, jersey;
    VEC(struct role_binding) lineup; /* role: the quoted name; who: the number */
};
struct form {
    enum form_kind kind;
    struct span span;
    const struct line *line; /* the line it stands on, with its comment */
    union {                  /* by kind; what is large is kept apart */
        struct sentence *sentence;
        struct setting_form *setting;
        struct standing *standing;
        struct note_form *note;
        struct plan_form *plan;
        struct row_form *row;
        struct {
            struct str title; /* chapter, include, roster's name, lineup's name */
            int number;       /* version, roster */
            struct roster_form *roster;
        };
    };
    struct block *block;
};

enum block_kind {
    BLOCK_FILE,
    BLOCK_PLAYBOOK,
    BLOCK_TEAM,
    BLOCK_ACTION,
    BLOCK_PLAY,
    BLOCK_DRILL,
    BLOCK_STEP,
    BLOCK_READ,
    BLOCK_OPTION,
    BLOCK_PRACTICE,
    BLOCK_CHARTED
};
/* One condition of a read: a defender's verb, what two of them do together (switch, trap), or what
 * a player is. */
struct condition {
    enum { COND_VERB, COND_BOTH, COND_OPEN, COND_COVERED, COND_DENIED, COND_OTHERWISE } kind;
    struct who who, other; /* other: the second of two; a verb's object (NONE: left out) */
    struct who object;     /* BOTH: of their verb: x1 and x5 trap 1 */
    enum verb verb;
    const struct place *place; /* helps, drops, rotates to; NULL: not written */
    struct span span;
};
enum occasion { OCCASION_PRACTICE, OCCASION_GAME, OCCASION_FILM };
struct block {
    enum block_kind kind;
    struct span span; /* of the heading */
    const struct line *line;
    struct str title; /* empty: none written */
    bool title_quoted;
    struct str mirrors; /* play "A" mirrors "B" */
    struct span title_span, mirrors_span;
    int number;                       /* step 2; 0: not written */
    struct str date;                  /* charted: 2026-12-01 */
    enum occasion occasion;           /* charted */
    struct tie tie;                   /* step … as …; */
    struct str after;                 /* step … after "Fade" */
    VEC(struct str) roles;            /* action … for … */
    VEC(struct condition) conditions; /* read; joined by or */
    bool one_line;                    /* if x3 trails, 3 curls off 5 */
    bool implied;           /* a play without a heading: the lines before the file's first one */
    bool broken;            /* the heading was not understood: reported */
    VEC(struct form) forms; /* in the order written */
    uint32_t settings;      /* a bit for each that stands among them, so that no other is sought */
};

static inline bool block_sets(const struct block *block, enum setting setting)
{
    return block && (block->settings >> setting & 1) != 0;
}

/* A book: the blocks of its files, includes already in the place of their line (FORM_INCLUDE with
 * block != NULL, kind BLOCK_FILE). */
struct book {
    struct block *file;
};

#endif
