/* SPDX-License-Identifier: MIT */
/* grammar: what the readers of a sentence share among themselves. Inside words only. */
#ifndef LANGUAGE_WORDS_GRAMMAR_H
#define LANGUAGE_WORDS_GRAMMAR_H

#include "language/words/vocabulary.h"

/* Reports an error: gives the entry for diag_help. */
#define REFUSE(c, code, span, ...)                                                                 \
    ((c)->refusals++, diag_add((c)->diags, DIAG_##code, (span), __VA_ARGS__))

/* who */
bool who_defends(const struct who *who);
bool who_is_one(const struct who *who); /* an attacker, by number or role */
const struct who *who_keep(struct cursor *c, struct who who);
bool same_who(const struct who *a, const struct who *b); /* the same player, by what is written */
bool person_read(struct cursor *c, struct who *out);     /* as who_read, but no spot */
bool defender_read(struct cursor *c,
                   struct who *out);                /* a defender there is; else unmoved, silent */
bool owner_read(struct cursor *c, struct who *out); /* "3's" */
/* zone_men: the top right defender, where the zone that is set has one such. */
bool zone_man_read(struct cursor *c, struct who *out);
bool him_read(struct cursor *c, struct who *out); /* in speech: the only one it can be */

/* place */
/* Kept where sentences can point at it. */
const struct place *place_keep(struct arena *arena, struct place place);
/* The same, of one that hangs on this player. */
const struct place *place_by(struct arena *arena, enum place_kind kind, struct who who);
/* What has been read since `from`, kept. */
const struct place *place_new(struct cursor *c, struct place place, const struct token *from);
/* The same place on another side. */
const struct place *place_sided(struct cursor *c, const struct place *place, enum side side);
/* A place breaks off: reported, and back to `mark`. */
const struct place *place_half(struct cursor *c, struct cursor_mark mark, const char *message,
                               const char *help);
/* What has been read since `from` stands in drills only: reported elsewhere. */
void place_of_drills(struct cursor *c, const struct token *from);
/* spot: */
/* A named spot, side, next spot or cone. Quiet: unmoved and silent where one is half written. */
const struct place *spot_read(struct cursor *c, bool quiet);
/* The same, without its notes: to look, or where another note tells. */
const struct place *spot_here(struct cursor *c);
/* Takes one of these words and a spot behind it; NULL: unmoved. Silent. */
const struct place *spot_behind(struct cursor *c, const char *const *leads);
const struct place *nearby_read(struct cursor *c, int depth); /* nearby: as spot_read, quiet */
bool place_starts(const struct cursor *c); /* a place begins here, whole or not */
/* A place or a person: exactly one of the two is set. Unmoved and silent when nothing fits. */
bool place_or_who_read(struct cursor *c, int depth, const struct place **place, struct who *who);
/* Says what is wrong where a place should stand. `before`: the sentence so far, for the help. */
void place_refuse(struct cursor *c, struct str before);

/* clauses */
/* [then] [,] clause [,] or meanwhile, in front of a sentence; false: reported. No tie: untouched.
 */
bool front_tie_read(struct cursor *c, struct tie *tie);
/* second, 2 goes to top: then; a sentence must follow. Unmoved: none here. */
bool front_ordinal(struct cursor *c);
/* amends: the sentence goes back on what stands above, and is refused: I mean, but first. */
bool amends_refused(struct cursor *c);
/* clause */
bool article_second(const struct cursor *c); /* the second 1 passes */
/* A clause begins here: as, after, when, while, 1 s after, at 2 s, 1 s later. */
bool clause_is(const struct cursor *c);
/* clause: the reason why no event could be read behind `word`. */
void event_refuse(struct cursor *c, const char *word);
/* A clause says who does what, without where: true when a place follows, and was reported. */
bool clause_place(struct cursor *c, const struct event *event, const char *word);
/* One clause; false: reported. */
bool clause_read(struct cursor *c, struct tie *tie);
/* What stands before the cursor is no preposition: what follows may be left to the sentence. */
bool bare_before(const struct cursor *c);
bool until_read(struct cursor *c, struct event *out); /* behind `until`; false: reported */
bool event_is_state(const struct event *event);
const struct event *event_keep(struct cursor *c, struct event event);

/* above: words that point back */
/* The sentences above in the order written: of the earlier steps too (not their branches), or only
 * of this block. */
typedef VEC(const struct sentence *) above_list;
above_list above_sentences(const struct cursor *c, bool earlier);
size_t above_count(const struct cursor *c); /* of those that are not earlier */
/* "the pass", "the catch", "the screen" as an event. 1: read, 0: none of them here, -1: reported.
 */
int above_event_read(struct cursor *c, struct event *out);
/* One of those nouns begins here; `behind_off`: those that something may come off in time: the
 * pass, the catch. */
bool above_noun_is(const struct cursor *c, bool behind_off);
bool above_catch_is(const struct cursor *c); /* the noun is the catch, 4's catch */
/* "his defender", "their defender"; one that is nobody's is reported and taken as read. */
bool his_defender_read(struct cursor *c, struct who *out);
/* "the drive", "2's cut": who does it. Unmoved where none stands above. */
bool above_noun_doer(struct cursor *c, struct who *out);
/* "the roller", "the screener": whose latest such sentence above is one player's. Unmoved where
 * none is. */
bool above_doer_read(struct cursor *c, struct who *out);
/* Besides the latest screener another one has set a screen in this step that is not used yet. */
bool above_two_screen(const struct cursor *c, const struct who *latest);
/* "the screen", "5's screen", for the one who uses it. As above_event_read. */
bool above_screen_noun_is(const struct cursor *c); /* one of its nouns begins here */
int above_screen_read(struct cursor *c, const struct who *user, struct who *out,
                      struct who *second);
/* Who uses the latest screen above, and who set it; false: there is none with one of each. */
bool above_last_screen(const struct cursor *c, struct who *user, struct who *screener);
/* The one screen that waits for this user. False: none, or several (`*several`). */
bool above_waiting_screen(const struct cursor *c, const struct who *user, struct who *out,
                          struct who *second, bool *several);
/* The screen for this user that was set in this line, as it is written, and that he has not used.
 */
bool above_screen_here(const struct cursor *c, const struct who *user, struct who *out,
                       enum screen_kind *kind, struct who *second);
/* The screen that waits for this user, when neither he nor who set it has gone on since, and no
 * pass has come to him. */
bool above_screen_holds(const struct cursor *c, const struct who *user, struct who *out,
                        enum screen_kind *kind, struct who *second);
bool acts_in(const struct sentence *s, const struct who *who); /* is one of its subjects */
/* Whether this player's latest screen is for that user. */
bool above_screened(const struct cursor *c, const struct who *user, const struct who *screener);
bool above_pressed(const struct cursor *c); /* a press is set */
bool above_zone(const struct cursor *c);    /* the defense is a zone, or some of it is */
/* Whom a defender guards as written so far; false under a zone, where that depends on the floor. */
bool above_guarded(const struct cursor *c, const struct who *defender, struct who *out);
/* The other way round: by number where it is known who guards whom, else as 3's defender. */
struct who above_defender_of(const struct cursor *c, const struct who *player, struct span span);
/* Leaves a defender's object out where it is his own man and the verb means him anyway: x3 denies 3
 * is x3 denies. */
void above_drop_own_man(const struct cursor *c, const struct who *defender, enum verb verb,
                        struct who *object);
/* The same, or he may have: an action was run, a step repeated. */
bool above_may_have_screened(const struct cursor *c, const struct who *user,
                             const struct who *screener);
/* Whether each of these has set a screen above, or may have. */
bool above_has_screened(const struct cursor *c, const struct who *who, size_t count);
/* The verb of this player's latest sentence: "cuts"; empty: none above. */
struct str above_verb(const struct cursor *c, const struct who *who);
/* Who caught the latest pass of this player; WHO_NONE: no such pass. */
struct who above_receiver(const struct cursor *c, const struct who *passer);

/* condition */
/* What the defense does as a noun begins here, with nothing but a sentence behind it: a trap, help
 * from x4. */
bool coverage_is(const struct cursor *c);
/* they trap, he is under: at the latest screen above. Unmoved: nothing of that here. */
bool coverage_said(struct cursor *c, struct condition *out);
/* state: is open, is covered, is denied, behind somebody: EVENT_…, or -1, unmoved. */
int take_state(struct cursor *c);
/* The same, as what a read asks; the roll is there: of whom it is. False: unmoved. */
bool asked_state_read(struct cursor *c, struct condition *out);
bool deed_state_read(struct cursor *c, struct condition *out);

/* holder: who has the ball, and who he is, by the lines above */
/* The last line of this setting in the block so far; NULL: none. */
const struct setting_form *setting_of(const struct block *top, enum setting setting);
/* One player or role; false: the words do not tell. */
bool above_holder(const struct cursor *c, struct who *out);
bool above_holds(const struct cursor *c, const struct who *who); /* that is he */
bool above_full_floor(const struct cursor *c); /* the play is run on the whole of it */
/* The only attacker of the latest sentence above that names one besides `not`. */
bool above_him(const struct cursor *c, const struct who * not, struct who *out);
/* The noun of something a player does, whoever it is of: drive, pass. */
bool above_noun_verb(struct cursor *c, struct event *out);

/* moment: moments that are not named by a plain verb. */
/* A verb in the past: the same words with the first as it is when bare: drove, come. */
bool past_read(struct cursor *c, enum phrase_side side, struct phrase *out);
/* The same, and its first word when bare: lifted, lift. */
bool past_base(struct cursor *c, enum phrase_side side, struct phrase *out, struct str *bare);
/* `out` is the moment of that sentence; over: it is done then. */
void moment_of(struct event *out, const struct sentence *s, bool over);
/* Behind who it is of: has cut, starts to roll, gets there. `*verb`: `*phrase` was read, whose
 * object may follow. */
bool moment_read(struct cursor *c, struct event *out, struct phrase *phrase, bool *verb);
/* gets there, is set, picks it up: of the latest sentence of that player. */
bool moment_arrival_read(struct cursor *c, struct event *out);
/* Behind the pass, the screen: is in the air, is set, by 2; whose it is may be said there. */
void moment_behind_noun(struct cursor *c, struct event *out, bool ball);
bool same_spot(const struct place *a, const struct place *b); /* a side that is not said is any */
/* Where, when the sentence that is meant says the same: taken, true. */
bool moment_same_place(struct cursor *c, const struct event *event);
/* Where who catches does so, when no pass to him stands above: the pass goes there. */
void moment_catch_place(struct cursor *c, struct event *event);
/* through, the lane, all the way: adds nothing to a movement in a clause. */
void moment_way(struct cursor *c, const struct event *event);
/* Seconds as a number, or as beats and counts, which a note tells in seconds. */
bool take_seconds(struct cursor *c, struct measure *out);
bool skip_seconds(struct cursor *c); /* the same, silent */

/* told, in speech: what is done then, told as a sentence is, with where and how, up to a comma or
 * to where somebody else acts. Unmoved and without a word when nothing fits. */
bool event_told(struct cursor *c, struct event *out);
/* pointed: he is there, it is set, 1 lobs to him: the same. */
bool event_pointed(struct cursor *c, struct event *out);
/* pointed: the only one whom the clause in front names: `him` behind it; or NULL. */
const struct who *told_in_front(const struct tie *tie);
/* untold: the sentence is one the moment may be of, by its words. */
bool event_of(const struct sentence *s, const struct event *event);
/* A catch that nobody passes for: the pass was put in front. */
void note_pass_brought(const struct cursor *c, struct span span, int from, int to);
/* An event whose verb is another than that of the only sentence above it can mean: becomes its
 * moment, and is told by note_told. */
bool event_settled(const struct cursor *c, struct event *event);
bool event_arrives(const struct cursor *c); /* 5 gets up to the elbow: that is when it is done */
const char *unsaid_place(const struct cursor *c, struct sentence *s); /* to the rim: cuts alone */
void note_told(const struct cursor *c, const struct event *event);    /* how it was read */
/* The latest of these that tells what is told: the same player and kind, and neither somebody else
 * nor another spot. NULL: none. */
const struct sentence *told_among(const above_list *list, const struct sentence *told);

/* light: a verb with its noun: makes a pass; a shot; takes two dribbles. Unmoved: none here. */
bool light_verb_read(struct cursor *c, enum phrase_side side, struct phrase *out);
bool light_shot_read(struct cursor *c, enum phrase_side side, struct phrase *out);
bool light_dribble_read(struct cursor *c, enum phrase_side side, struct phrase *out);

/* pair: what one phrase says in two sentences */
bool pair_is(const struct cursor *c);
/* Where two meet was said, and is left out: a note. */
void note_meeting(const struct cursor *c, struct span span);
bool trade_is(const struct cursor *c);        /* two exchange places */
bool pair_needs_ball(const struct cursor *c); /* one that begins with the ball in hand */
/* Adds what this subject does, as far as the cursor has come. */
void pair_add(struct cursor *c, sentence_list *out, const who_list *subject, struct tie tie,
              struct sentence sentence, struct span verb);
/* Behind the subject: 1: both added, 0: no such phrase here, -1: reported. */
int pair_read(struct cursor *c, const who_list *subject, struct tie tie, sentence_list *out);

/* 2 takes the hand-off from 1, 3 gets a screen from 5: said by who gets it. Behind the subject: 1:
 * the sentence of the other is added, 0: no such words here, -1: reported. */
int inverse_read(struct cursor *c, const who_list *subject, struct tie tie, sentence_list *out);
bool inverse_is(const struct cursor *c);

/* why: before the trap gets there, behind a sentence: left out, with a note. Unmoved: none here. */
bool hurry_behind(struct cursor *c);

/* sentence */
/* `x3 guards 3` is a sentence here, and no line for all of the play. */
bool guards_begun(const struct cursor *c);
/* A subject and a verb follow: where a new sentence may begin. */
bool subject_verb_is(const struct cursor *c);
bool subject_read(struct cursor *c, who_list *out);
enum phrase_side who_side(const struct who *who);
/* Whether the list may act; false: reported. */
bool subject_fits(struct cursor *c, const who_list *list);
struct str subject_words(const struct cursor *c, const who_list *list); /* as written */
bool verb_begins(const struct cursor *c);                               /* any verb begins here */
/* seals the middle | man: what was just read says which of a zone, and not his own. */
bool one_of_a_zone(const struct cursor *c);
/* will, now, `goes out and`, `comes to` before the verb add nothing but, some of them, a pace,
 * `quickly`, `sprints out to`, and the kind of a screen: goes down and screens. */
struct run_in {
    enum pace pace; /* PACE_VERB: none */
    bool moves;     /* somebody goes some way, or makes a move, that the verb does not say */
    enum screen_kind slant; /* SCREEN_PLAIN: none */
};
enum pace skip_run_in(struct cursor *c);
struct run_in read_run_in(struct cursor *c); /* with a note of what is left out */
/* Verb and all behind it, for a subject that is known; false: reported. */
bool rest_read(struct cursor *c, struct sentence *s);
bool elided_read(struct cursor *c, struct sentence *s); /* the verb is set: what stands behind it */
/* `and`, `then` or a comma: between what goes before and the verb. */
bool take_joint(struct cursor *c);
/* A verb that uses a screen begins here: curls, comes off. */
bool use_follows(const struct cursor *c);
bool uses_screen_is(const struct cursor *c); /* uses the screen, uses 5's screen */
bool take_uses(struct cursor *c);

/* hint: what to write instead of words that coaches use and the language does not take */
enum hint_where { HINT_VERB, HINT_SUBJECT, HINT_REST };
/* For what stands at the cursor; `who` acts. Empty: none. */
struct str hint_for(const struct cursor *c, enum hint_where where, struct str who);
/* The same, and where the words of the row end. */
struct str hint_until(const struct cursor *c, enum hint_where where, struct str who,
                      const struct token **end);
/* The most usual verbs of a side, for who stands lost. */
struct str hint_usual(const struct cursor *c, enum phrase_side side, bool bare);

/* refuse: each reports */
void refuse_subject(struct cursor *c);
void refuse_verb(struct cursor *c, const who_list *list);
/* Whether words for which there is a hint go on behind the verb just read: reported. */
bool refuse_longer(struct cursor *c, const who_list *list, const struct token *verb);
bool refuse_use(struct cursor *c, const struct sentence *s);    /* false */
bool refuse_run_on(struct cursor *c, const struct sentence *s); /* false */

/* predicate */
struct predicate {
    struct cursor *c;
    struct sentence *s;
    struct phrase phrase;
    const struct token *from;       /* where the verb begins */
    const struct token *after_verb; /* where its words end */
    bool on_bare;                   /* screens x2: who it is for follows, or is the one x2 guards */
    bool path_done;                 /* said already */
    enum spot via;                  /* the way leads by it, where via_span is not empty */
    struct span via_span;
    bool way_said;            /* and left out: where it ends may stand behind a comma */
    bool across;              /* said before the place: to the other side */
    bool part_way;            /* two dribbles toward a place, which is not reached */
    bool used, holds;         /* uses 5: no other verb; by the one who has the ball */
    struct span comma_clause; /* a clause behind a comma, the last thing read; else empty */
};
bool verb_takes_place(enum verb verb);
/* A verb that uses a screen, by itself or with `off`, which is put in. */
bool use_verb(struct sentence *s);
/* A second verb that says how the screen is used, or where that ends: taken. */
bool use_goes_on(struct predicate *p);
/* Takes one slot of the verb. 1: taken, 0: none fits here, -1: reported. */
int slot_read(struct predicate *p);
/* slot_content: 1: taken, 0: none of it here, -1: reported. */
int slot_player(struct predicate *p, const struct slot *slot, struct who who);
int slot_place(struct predicate *p, const struct place *place);
int slot_measure(struct predicate *p, char letter); /* L, T: always one of the two others */
int slot_way(struct predicate *p);                  /* baseline, middle */
int slot_path(struct predicate *p);                 /* around 5, past left wing */
int slot_screen(struct predicate *p);               /* off the screen, off 5's screen */
int slot_defender(struct predicate *p);             /* on x2 */
/* Whatever a slot of this letter holds, its preposition taken. */
int slot_content(struct predicate *p, const struct slot *slot);
/* extras: 1: taken, 0: none of these words here, -1: reported. */
int guard_extra(struct predicate *p);
bool attack_extra(struct predicate *p);
bool for_shot(struct predicate *p); /* for three: the shot that comes of it */
/* from left wing, out of the corner. */
int begins_read(struct predicate *p);
/* clears the corner, goes baseline: two things; -1: one of them, and reported. */
int clears_what(struct predicate *p);
bool past_defender(struct predicate *p); /* drives past x1 */
bool through_gap(struct predicate *p);   /* through the gap between x1 and x2 */
/* out, up, back right before a place or what leads to one; right, straight before a preposition. */
bool drop_particle(struct predicate *p, bool place);
void drop_stress(struct cursor *c);
/* way: 1: taken, 0: none of these words here, -1: reported. */
int along_read(struct predicate *p);
/* Takes `down the lane`; led: the first of it stands before the cursor already. */
bool take_way(struct cursor *c, bool led);
/* flies: of a pass: on the bounce, over the top; for the lob, as along_read. */
bool how_it_flies(struct predicate *p);
int for_lob(struct predicate *p);
/* ends: a second verb that only says where this one ends: and stops at the elbow. */
bool ends_said(struct predicate *p);
/* Behind a comma: the spot once more; so far behind the line. As along_read. */
int same_place_again(struct predicate *p);
int behind_line(struct predicate *p);
void far_from_ball(struct predicate *p); /* in the far corner: far from the ball */
/* use_ends: uses the screen of somebody who has set none: reported. */
bool screen_of_nobody(struct predicate *p);
/* via: out of the lane, away from the rim, and where to is not said: reported. */
bool leaves_for_nowhere(struct predicate *p);
/* via: which way was said, and is left out with a note, unless the words behind it make it a
 * sentence of its own. */
void note_way(struct predicate *p, struct span span);
/* through the lane to the corner: that sentence, or the note. */
void way_settled(struct predicate *p);
/* drive: the way that ends before `end` changes what is run: taken for the side of a drive. placed:
 * where it ends is said. As along_read. */
int drive_runs(struct predicate *p, const struct token *from, const struct token *end, bool placed);
int going_read(struct predicate *p);     /* going left, going middle: the same */
int way_off_screen(struct predicate *p); /* comes off 5 baseline: the same */
/* Where somebody ends who goes this way off a screen, with a note. */
const struct place *place_off_screen(struct cursor *c, enum drive_side way, struct span span);
/* toward: left, across, high: where it ends. As along_read. */
int toward_read(struct predicate *p);
int side_off(struct predicate *p);
int side_alone(struct predicate *p); /* drives left: of these alone in a plain line */
/* guard_way: where a defender goes, which is left out with a note. As along_read. */
int guard_way(struct predicate *p);
/* pass_by: what is passed by, which is left out with a note. As along_read. */
int passing_by(struct predicate *p);
int toward_side(struct predicate *p); /* left, high: which way, before where to */
int by_defender(struct predicate *p);
bool where_follows(const struct cursor *c); /* somewhere to go, or for whom, is said still */
bool way_goes_on(const struct cursor *c);   /* the same, behind more that is passed by */
bool way_ends_here(const struct cursor *c); /* nothing more is said of where to */
/* and comes out: a second verb that only says where the way ends. */
extern const char *const way_end_words[];
/* aside: what moves nobody is left out, with a note. 1: taken, 0: nothing of that. */
int aside_read(struct predicate *p);
void note_left_out(const struct cursor *c, struct span span); /* moves nobody: a note */
bool aside_head_is(const struct cursor *c); /* hands up: words that look like a verb */
bool aside_aim_is(const struct cursor *c);  /* free 3, overload that side: why somebody moves */
bool screen_named(const struct cursor *c);  /* called: the name of a screen begins here */
/* remark: nothing but what a coach says beside the movement stands up to the end. */
bool remark_is(const struct cursor *c);
/* counted: so many dribbles, and where to is not said, or only toward where: part of the way. */
void counted_part(struct predicate *p);
/* supply: the place a phrase brings with it. */
void place_of_phrase(struct predicate *p);
/* stands: the spot somebody stands on by the lines above; the side is NONE where the spot has none.
 * False: the words do not tell. */
struct spot_stood {
    enum spot spot;
    enum side side;
};
bool above_stands(const struct cursor *c, const struct who *who, struct spot_stood *out);
/* As same_spot: the place is where he stands. */
bool stood_on(const struct spot_stood *at, const struct place *place);
/* What the start says of this player: by himself, or in a formation; NULL: nothing. */
const struct placing *above_placing(const struct cursor *c, const struct who *who);
/* the corners, both wings: each of two has one. */
bool several_spot(struct cursor *c, enum spot *out);
/* unsaid: where it ends, that is not said and that its words tell. */
void end_unsaid(struct predicate *p);
void end_inside(struct predicate *p); /* dives to a side: to the block there */
/* Where it ends, with a note that this was taken. */
void take_place(struct predicate *p, struct place place, const char *taken);
/* receiver: to whom a pass goes that does not say it. */
bool receiver_above(struct predicate *p);
void note_him(struct predicate *p); /* of two who moved: which one is taken for him */
/* A player of a needed slot that is not written but known from above; false: reported. */
bool player_above(struct predicate *p, const struct slot *slot);
/* goes away from somebody who has set him no screen: reported. */
bool away_from_nobody(struct predicate *p);
/* What the verb needs and did not get; false: reported. */
bool slots_filled(struct predicate *p);
/* Takes one modifier, as slot_read. */
int modifier_read(struct predicate *p);
/* The object of an event or a condition, when one follows; a range fault is reported. */
void event_object_read(struct cursor *c, enum verb *verb, const struct phrase *phrase,
                       struct who *out);

/* joint: the end of a line or of a sentence in it; the next sentence begins. */
/* `and VERB`, `, VERB`, `then VERB`, `and WHO VERB`: where the next sentence begins. */
struct joint {
    bool then, same_subject, clause, who; /* who: of the one whom the sentence is to */
    bool counted; /* one dribble to the elbow: of the one who has the ball */
    bool so;      /* what comes of it: behind it, unless its verb waits by itself */
    bool leg;     /* no verb of its own: and out to the corner, 4 to the wing, 5 for 3 */
};
/* One of them begins here: what it is, and where the sentence behind it begins. */
bool joint_is(const struct cursor *c, enum phrase_side side, const struct sentence *last,
              struct joint *out, const struct token **begin);
/* goes to the corner to screen for 2: the same, where only a purpose is said. */
bool joint_purpose_is(const struct cursor *c, const struct token **begin);
/* Where to, without a verb; for whom, where the verb is that of the screen before. */
bool leg_is(const struct cursor *c);
bool leg_again_is(const struct cursor *c, const struct sentence *last);
bool stop_is(const struct cursor *c);
bool part_ends(const struct cursor *c); /* the same, or a joint: no more is said of this */
bool next_is(const struct predicate *p, enum phrase_side side);
bool leg_follows(const struct cursor *c);      /* where to begins here */
bool joint_follows(const struct predicate *p); /* by `and`, a comma or `then` */
/* 4 and 5 set down screens, 4 for 2, 5 for 3: each of them is said behind it. */
bool spread_is(const struct predicate *p);
bool next_is_anothers(const struct predicate *p); /* the next one, and of somebody else */

/* apart: the last two are one dribble, and become it. */
bool drive_ends(const struct cursor *c, sentence_list *out);
/* apart: the shot is the one that stands before it; how long is a sentence of its own; what a
 * clause in front says of the others is not of the last of those from `first` on. */
bool shot_already(const struct cursor *c, const sentence_list *out, const struct sentence *s);
void hold_apart(struct cursor *c, sentence_list *out);
void free_of_tie(sentence_list *out, size_t first);
/* Leaves out, with a note, what those of the chain from `first` on tell a second time. */
void told_once(const struct cursor *c, sentence_list *out, size_t first);

/* chain: every sentence up to c->end, in this one reading; false: reported. */
bool chains_read(struct cursor *c, sentence_list *out);

int refuse_left(struct predicate *p); /* what is left over: -1 */

/* blame: each reports, and gives -1 (or false) */
struct str predicate_begun(const struct predicate *p); /* "5 screens", for helps */
struct str predicate_begun_to(const struct predicate *p, struct str preposition);
int said_twice(struct predicate *p, struct span span, const char *what);
int player_missing(struct predicate *p, struct str preposition);
int preposition_missing(struct predicate *p, const struct who *who, struct str preposition);
bool place_needed(struct predicate *p, const struct slot *slot);
/* 1 when this player may stand in a slot of this letter, else reported. */
int player_fits(struct predicate *p, const struct who *who, char letter);
/* him, her, his: true when one stands here, and was reported. */
bool points_back(struct cursor *c);

#endif
