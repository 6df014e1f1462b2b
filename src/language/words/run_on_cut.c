/* SPDX-License-Identifier: MIT */
/* run_on_cut: a line without marks, cut wherever a new clause can begin: see run_on.h. Takes its
 * tokens; knows no sentence. */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

/* ---- joints ---- */

static const char *const head_words[] = {"so",
                                         "okay",
                                         "ok",
                                         "alright",
                                         "all right",
                                         "now",
                                         "well",
                                         "but",
                                         "next",
                                         "boom",
                                         "bang",
                                         "guys",
                                         "ladies",
                                         "gentlemen",
                                         "kids",
                                         "fellas",
                                         "folks",
                                         "listen up",
                                         "listen",
                                         "you know",
                                         "i mean",
                                         "from there",
                                         "right away",
                                         "immediately",
                                         "to start",
                                         "to begin",
                                         "first thing",
                                         "also",
                                         "finally",
                                         "basically",
                                         "obviously",
                                         "this time",
                                         "on this one",
                                         "here",
                                         "from here",
                                         "here we go",
                                         "let's see",
                                         "again",
                                         "and",
                                         "plus",
                                         "the first thing is",
                                         "next thing is",
                                         "the next thing is",
                                         "and the next thing is",
                                         "quick",
                                         "at this point",
                                         "at that point",
                                         "out of that",
                                         "off that",
                                         "uh",
                                         "um",
                                         "oh",
                                         "yeah",
                                         "see",
                                         "look",
                                         "everybody",
                                         "first",
                                         "first of all",
                                         "ready",
                                         "the action is",
                                         "what happens is",
                                         "quickly",
                                         "simple",
                                         "easy",
                                         "real simple",
                                         "real quick",
                                         "girls",
                                         "gang",
                                         "team",
                                         "boys",
                                         "alright then",
                                         "okay then",
                                         NULL};
static const char *const after_words[] = {
    "then", "after that", "and after that", "after this", "once that's done",
    "next", "afterwards", "later",          NULL};
static const char *const meanwhile_words[] = {"meanwhile",
                                              "at the same time",
                                              "same time",
                                              "at that same time",
                                              "while that's happening",
                                              "while that is happening",
                                              "as that's happening",
                                              "when that's happening",
                                              "while it's going",
                                              "while it is going",
                                              "while that's going",
                                              "while that is going",
                                              "while this is going",
                                              "while that is going on",
                                              "while that's going on",
                                              "while this is happening",
                                              "while this is going on",
                                              "while all that's happening",
                                              "in the meantime",
                                              NULL};

static const char *const why_words[] = {"because",  "cause",   "cuz",     "'cause", "since",
                                        "that way", "so that", "in case", NULL};

/* everybody is who acts, look and see what is done, where more is said of it. */
static bool heads(const struct cursor *c, const struct token *at, const struct token *to)
{
    static const char *const doubtful[] = {"everybody", "look",    "see",  "first", "here", "ready",
                                           "quick",     "quickly", "easy", "guys",  NULL};
    if (!token_is_among(at, doubtful) || to != at + 1) {
        return true;
    }
    return to < c->end && (run_on_somebody(c, to) != NULL || token_is_among(to, head_words));
}

/* Past what joins a clause to the one before it. */
static const struct token *past_joints(const struct cursor *c, const struct token *at,
                                       struct run_on_piece *piece)
{
    for (;;) {
        at = past_sounds(at, c->end);
        struct cursor trial = line_look(c, at);
        if (at >= c->end) {
            return at;
        }
        struct cursor why = trial;
        if (at->kind == TOKEN_MARK && at->mark != '?' && at->mark != '(') {
            at++;
        } else if (take_among(&why, why_words)) {
            return at;
        } else if (take_among(&trial, meanwhile_words)) {
            piece->meanwhile = true;
            at = trial.at;
        } else if (take_among(&trial, after_words)) {
            piece->then = true;
            at = trial.at;
        } else if ((token_is_word(at, "right") || token_is_word(at, "alright")) &&
                   at + 1 < c->end && at[1].kind == TOKEN_NUMBER) {
            at++;
        } else if (take_among(&trial, head_words) && heads(c, at, trial.at)) {
            piece->so = piece->so || token_is_word(at, "so");
            at = trial.at;
        } else {
            return at;
        }
    }
}

static const char *const moment_words[] = {"when",       "as soon as", "as",         "once",
                                           "after",      "while",      "until",      "the second",
                                           "the moment", "whenever",   "the minute", "right when",
                                           "right as",   "just as",    NULL};
static const char *const if_words[] = {"if", "otherwise", "unless", NULL};

/* at the top, as a decoy: no moment. */
static bool moment_at(const struct cursor *c, const struct token *at)
{
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, moment_words)) {
        return false;
    }
    return run_on_somebody(c, past_sounds(trial.at, c->end)) != NULL;
}

static enum run_on_kind kind_at(const struct cursor *c, const struct token *at)
{
    struct cursor trial = line_look(c, at);
    if (word_among(&trial, if_words)) {
        return RUN_ON_IF;
    }
    if (word_among(&trial, why_words)) {
        return RUN_ON_WHY;
    }
    return moment_at(c, at) ? RUN_ON_MOMENT : RUN_ON_DEED;
}

/* ---- the cut ---- */

/* Something is done between these. */
static bool done_between(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const had[] = {"is", "are", "has", "have", "was", NULL};
    for (const struct token *at = from; at < to; at++) {
        if (run_on_verb(c, at) || token_is_among(at, had)) {
            return true;
        }
    }
    return false;
}

/* Behind a joint, a clause begins here. */
static bool begins_behind(const struct cursor *c, const struct token *at)
{
    static const char *const leads[] = {"to", "into", "for", "off", "at", "with", "from", NULL};
    return at < c->end && (run_on_begins(c, at) || kind_at(c, at) != RUN_ON_DEED ||
                           run_on_past_openers(c, at) > at + 1 || /* what I want is 5 to come */
                           (!token_is_among(at, leads) && run_on_verb(c, run_on_past_aux(c, at))));
}

/* What stands before who, and binds him to it. */
static bool binds(const struct token *at)
{
    static const char *const words[] = {
        "to",       "toward", "towards", "beside", "near",    "for",     "off",     "of",
        "by",       "from",   "with",    "on",     "at",      "and",     "into",    "behind",
        "past",     "around", "when",    "as",     "after",   "once",    "if",      "while",
        "until",    "till",   "because", "that",   "who",     "where",   "so",      "how",
        "what",     "let",    "have",    "get",    "between", "or",      "over",    "under",
        "like",     "than",   "want",    "hits",   "hit",     "finds",   "find",    "feeds",
        "feed",     "soon",   "time",    "since",  "cause",   "whether", "screens", "screen",
        "pass",     "passes", "got",     "has",    "in",      "second",  "moment",  "is",
        "both",     "player", "number",  "gives",  "give",    "then",    "before",  "say",
        "inbounds", "lobs",   "not",     "use",    "uses",    "guards",  "through", "out",
        "switch",   "us",     NULL};
    return token_is_among(at, words) || at->filler;
}

static const char *const afresh[] = {"let's", "lets", "we're", "you're", "i'm", "we", "you", NULL};
static const char *const subjects[] = {"he", "she", "they", "we", "you", "i", "it", NULL};

/* two back to one, one to three: the ball goes there. */
static bool on_to(const struct cursor *c, const struct token *at)
{
    static const char *const tos[] = {"to", "back to", "over to", "right back to", NULL};
    struct cursor trial = line_look(c, at + 1);
    return attacker_at(at, c->end) && take_among(&trial, tos) && attacker_at(trial.at, c->end);
}

/* one hits two goes opposite; he curls and she pops: without a joint a new one begins. */
static bool runs_on(const struct cursor *c, const struct token *from, const struct token *at)
{
    static const char *const turns[] = {"if", "because", "cause", "cuz", "otherwise", NULL};
    if (at <= from || (token_is_word(at, "you") && at + 1 < c->end &&
                       token_is_word(at + 1, "know"))) { /* you know: a sound */
        return false;
    }
    if (token_is_word(at, "don't") && done_between(c, from, at)) {
        return !token_is_player(at - 1) && !token_is_among(at - 1, subjects);
    }
    if (on_to(c, at) && (token_is_player(at - 1) || done_between(c, from, at))) {
        return true;
    }
    if (token_is_among(at, turns)) {
        return done_between(c, from, at) &&
               !token_is_among(at - 1, (const char *const[]){"even", "as", "or", NULL});
    }
    static const char *const flies[] = {"kick", "lob",   "swing", "skip", "pass",
                                        "dump", "quick", "throw", NULL};
    const struct token *is = past_fillers(at + 1, c->end);
    const struct token *kick = is < c->end ? past_fillers(is + 1, c->end) : c->end;
    bool it = token_is_word(at, "it") && is < c->end && token_is_word(is, "is") && kick < c->end &&
              token_is_among(kick, flies);
    bool player = it || token_is_player(at) || token_is_among(at, he_or_she) ||
                  token_is_word(at, "they") || token_is_among(at, afresh) ||
                  (at->possessive && at->kind == TOKEN_NUMBER && at + 1 < c->end &&
                   token_is_among(at + 1, (const char *const[]){"gonna", "gotta", "man", "guy",
                                                                "defender", "girl", NULL}));
    if (!player || (binds(at - 1) && !(at[-1].filler && at - 1 > from && !binds(at - 2) &&
                                       token_is_word(at - 1, "just")))) {
        return false;
    }
    if (token_is_player(at) && counts_at(from, at, c->end)) {
        return false;
    }
    const struct token *behind = run_on_somebody(c, at);
    return behind && behind < c->end && done_between(c, from, at) &&
           (run_on_done(c, behind) || token_is_among(at, afresh));
}

static const char *const who_words[] = {"who", "that", "if", "where", "how", "and", "is", NULL};

/* comes toward the ball gets it: a second verb of the same one. */
static bool goes_on(const struct cursor *c, const struct token *from, const struct token *at)
{
    static const char *const ends[] = {"top",   "wing", "corner",   "elbow",  "block", "slot",
                                       "post",  "rim",  "basket",   "lane",   "paint", "nail",
                                       "key",   "it",   "ball",     "him",    "her",   "there",
                                       "floor", "hoop", "opposite", "middle", "away",  "side",
                                       "up",    "over", "out",      "across", NULL};
    static const char *const nouns[] = {"screens", "picks", "blocks", "cuts", "passes", NULL};
    const struct token *next = past_fillers(at + 1, c->end);
    bool done = next < c->end && (next->kind == TOKEN_NUMBER || token_is_word(next, "for"));
    if (at <= from + 1 || at->kind != TOKEN_WORD || !ends_in_s(at) ||
        (token_is_among(at, nouns) && !done) || !run_on_verb(c, at)) {
        return false;
    }
    return (token_is_among(at - 1, ends) ||
            (token_is_player(at - 1) && at - 2 > from && !moment_at(c, at - 2) &&
             !token_is_among(at - 2, who_words))) &&
           done_between(c, from, at - 1);
}

/* have 4 set it, watch 2 go: no second verb. */
static bool binds_verb(const struct token *at)
{
    static const char *const words[] = {"have", "let",   "let's", "want",  "get",   "when", "as",
                                        "if",   "after", "once",  "see",   "watch", "and",  "make",
                                        "got",  "with",  "while", "until", NULL};
    return token_is_among(at, words);
}

/* step out set the screen, break up get open: said to him, one verb behind the other. */
static bool told_on(const struct cursor *c, const struct token *from, const struct token *at)
{
    static const char *const verbs[] = {
        "set",    "go",   "come",  "get",     "cut",  "hit",   "throw", "pass", "swing",
        "kick",   "pop",  "drive", "shoot",   "seal", "curl",  "fade",  "look", "turn",
        "finish", "step", "run",   "find",    "feed", "catch", "keep",  "lob",  "put",
        "flash",  "dive", "stay",  "reverse", "flip", "hand",  "space", "be",   "deliver",
        "rip",    "face", "drop",  "fill",    NULL};
    static const char *const ends[] = {
        "top",   "wing", "corner",   "elbow",     "block", "slot",   "rim",  "basket", "lane",
        "paint", "nail", "key",      "it",        "ball",  "him",    "her",  "there",  "floor",
        "hoop",  "you",  "up",       "out",       "back",  "middle", "left", "right",  "hard",
        "tight", "open", "strong",   "halfcourt", "gut",   "inside", "away", "down",   "over",
        "off",   "post", "baseline", "through",   "court", "catch",  "face", "turn",   NULL};
    return at > from + 1 && token_is_among(at, verbs) &&
           (token_is_among(at - 1, ends) ||
            (token_is_player(at - 1) && at - 1 > from && !binds_verb(at - 2))) &&
           done_between(c, from, at - 1);
}

static bool is_joint(const struct token *at)
{
    static const char *const joints[] = {"and",  "then",    "but",       "so",    "boom", "now",
                                         "okay", "alright", "meanwhile", "while", NULL};
    return token_is_among(at, joints) ||
           (at->kind == TOKEN_MARK && at->mark != '?' && at->mark != '(' && at->mark != ')');
}

/* you go up you go up and set it, 4 cuts 4 cuts hard: what it does is said once more. */
static bool once_more(const struct cursor *c, const struct token *verb, const struct token *at)
{
    static const char *const words[] = {"is", "are", "has", "have", "got", "to", "gets", NULL};
    bool bound = binds(at - 1) && !token_is_word(at - 1, "out");
    if (at <= verb || bound || !run_on_verb(c, verb) || token_is_among(verb, words)) {
        return false;
    }
    at += token_is_player(at) && at + 1 < c->end;
    return at->kind == TOKEN_WORD && !at->filler && run_on_same_stem(verb, at);
}

/* goes up and screens, comes up and fills the top: of what he does the first leads there. */
static bool runs_in(const struct cursor *c, const struct token *verb, const struct token *at)
{
    static const char *const goes[] = {"goes",    "go",     "comes", "come",    "runs",   "run",
                                       "gets",    "steps",  "step",  "sprints", "sprint", "get",
                                       "slides",  "slide",  "drops", "drop",    "lifts",  "lift",
                                       "rotates", "rotate", NULL};
    static const char *const deeds[] = {"sets", "set",   "screens",  "screen",  "picks",
                                        "fill", "fills", "replaces", "replace", NULL};
    struct cursor trial = line_look(c, verb);
    if (verb >= at || !take_among(&trial, goes)) {
        return false;
    }
    take_particles(&trial);
    take_words(&trial, "right");
    return trial.at == at && at + 1 < c->end && token_is_word(at, "and") &&
           token_is_among(past_sounds(at + 1, c->end), deeds);
}

/* Where the clause that begins at `from` ends, and the next one begins. */
static const struct token *piece_end(const struct cursor *c, struct run_on_piece *piece,
                                     struct run_on_piece *next)
{
    const struct token *from = piece->from;
    bool why = piece->kind == RUN_ON_WHY;
    const struct token *head = run_on_past_openers(c, from);
    const struct token *who = run_on_somebody(c, head);
    const struct token *where = who ? run_on_past_where(c, who) : NULL;
    const struct token *verb = run_on_past_aux(c, where ? where : who ? who : head);
    for (const struct token *at = where ? where + 1 : from + 1; at < c->end; at++) {
        struct run_on_piece behind = {.joint = at};
        bool joint = is_joint(at);
        const struct token *to = joint ? past_joints(c, at, &behind) : at;
        bool list = joint && to < c->end && token_is_player(to) &&
                    ((!done_between(c, from, at) && !on_to(c, from)) ||
                     (token_is_player(at - 1) && run_on_past_openers(c, from) == at - 1));
        bool led = joint && runs_in(c, verb, at);
        piece->led = piece->led || led;
        bool begins = joint ? !list && !led &&
                                  (to == c->end || token_is_mark(at, '.') || on_to(c, to) ||
                                   token_is_mark(at, ';') || begins_behind(c, to))
                            : runs_on(c, from, at) || goes_on(c, from, at) ||
                                  told_on(c, from, at) || once_more(c, verb, at);
        begins = begins && !(why && !joint && !token_is_player(at));
        if (begins) {
            behind.from = to;
            *next = behind;
            return at;
        }
    }
    return c->end;
}

/* horns right one dribbles, flex cut four screens: what the play is called, in front of the first
 * clause; gives where that begins, or NULL. */
static const struct token *title_end(const struct cursor *c, const struct token *from)
{
    static const char *const nouns[] = {"action", "screen", "set",     "break", "hitter", "play",
                                        "look",   "series", "game",    "roll",  "pick",   "cut",
                                        "split",  "pig",    "handoff", NULL};
    static const char *const turns[] = {
        "if",  "when", "as",    "to",    "it",    "him",    "her",  "for",  "ball",  "off",
        "get", "have", "let",   "start", "on",    "at",     "in",   "with", "after", "from",
        "by",  "his",  "their", "until", "while", "hoping", "what", "who",  "that",  NULL};
    enum { FAR = 6 };
    bool noun = false;
    for (const struct token *at = from; at < c->end && at < from + FAR; at++) {
        struct run_on_piece none = {.joint = at};
        const struct token *behind = past_joints(c, at, &none);
        bool we = token_is_among(behind, afresh);
        if (at > from && behind < c->end && (we || attacker_at(behind, c->end)) &&
            run_on_begins(c, behind)) {
            return noun || !run_on_verb(c, run_on_past_aux(c, from)) ? at : NULL;
        }
        if (token_is_among(at, turns) || at->kind == TOKEN_NUMBER) {
            return NULL;
        }
        noun = noun || token_is_among(at, nouns);
    }
    return NULL;
}

bool run_on_cut(const struct cursor *c, struct run_on_pieces *out)
{
    struct run_on_piece piece = {.joint = c->at};
    piece.from = past_joints(c, c->at, &piece);
    out->count = 0;
    const struct token *titled =
        piece.from < c->end && !run_on_begins(c, piece.from) ? title_end(c, piece.from) : NULL;
    if (titled) {
        struct run_on_piece first = {.joint = titled};
        piece.kind = RUN_ON_TITLE;
        piece.to = titled;
        out->at[out->count++] = piece;
        first.from = past_joints(c, titled, &first);
        piece = first;
    }
    while (piece.from < c->end) {
        struct run_on_piece next = {.from = c->end};
        if (out->count == RUN_ON_MOST) {
            return false;
        }
        piece.kind = kind_at(c, piece.from);
        const struct token *whom = piece.from + 2;
        if (token_is_word(piece.from, "so") && whom < c->end && token_is_word(whom - 1, "that") &&
            attacker_at(whom, c->end) && run_on_begins(c, whom)) { /* so that 4 can cut */
            piece.from = whom;
            piece.kind = RUN_ON_DEED;
        }
        piece.to = piece_end(c, &piece, &next);
        out->at[out->count++] = piece;
        piece = next;
    }
    return out->count > 0;
}

bool run_on_cut_note(const struct cursor *c, struct run_on_pieces *out)
{
    struct run_on_piece piece = {.joint = c->at, .from = c->at};
    out->count = 0;
    for (const struct token *at = c->at; at <= c->end; at++) {
        bool slash = at < c->end && token_is_mark(at, '/') && at > c->at && at + 1 < c->end &&
                     attacker_at(at - 1, c->end) && attacker_at(at + 1, c->end);
        bool inside = at < c->end && (at->kind != TOKEN_MARK || slash || token_is_mark(at, '>') ||
                                      token_is_mark(at, '-') || token_is_mark(at, '+') ||
                                      token_is_mark(at, '&') || token_is_mark(at, '@'));
        if (inside) {
            continue;
        }
        piece.to = at;
        piece.kind = piece.from < at && token_is_word(piece.from, "if") ? RUN_ON_IF : RUN_ON_DEED;
        if (at > piece.from && out->count == RUN_ON_MOST) {
            return false;
        }
        if (at > piece.from) {
            out->at[out->count++] = piece;
        }
        piece.from = piece.joint = at + 1;
    }
    return out->count > 0;
}
