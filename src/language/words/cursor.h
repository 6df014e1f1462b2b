/* SPDX-License-Identifier: MIT */
/* cursor: the grammar of one sentence, read from the tokens of a line. Each reader takes what it
 * knows and moves `at` on; one that finds nothing of its own leaves the cursor where it was. Knows
 * words only: nothing of where anybody stands or who has the ball. */
#ifndef LANGUAGE_WORDS_CURSOR_H
#define LANGUAGE_WORDS_CURSOR_H

#include "language/words/sieve.h"
#include "language/words/words.h"

typedef VEC(struct sentence) sentence_list;

/* For a test that proves that no word is passed over: told of every piece taken, on ways that lead
 * nowhere too, and of the tokens of sentences that were read. */
struct cursor_watch {
    void (*took)(void *watcher, const struct token *from, const struct token *to);
    void (*read)(void *watcher, const struct token *from, const struct token *to);
    void *watcher;
};

struct cursor {
    struct arena *arena;
    struct diags *diags;
    const struct sources *sources;
    const struct token *at, *end; /* `at` moves on as things are read */
    struct span line_span;
    bool metres; /* the file's units, for (x, y) */
    bool drill;  /* behind, the end of the line, cones and the coach as subject stand in drills only
                  */
    int players; /* highest number of a player: 5, in a drill 12 */
    const struct str *roles; /* of the action that is being read, else none */
    size_t role_count;
    /* What stands above, for words that point back; each may be NULL. */
    const struct block *top, *step, *branch;
    const sentence_list *here;        /* those of this line so far: set by sentences_read */
    const struct token *first;        /* where they begin: the same */
    const struct who *doer;           /* who acts in it, where it is one: `him` is somebody else */
    const struct who *about;          /* in the answer to a read: whose choice it is, or NULL */
    bool about_two;                   /* or that of two: they switch */
    bool about_done;                  /* or to whom it is done: x4 doubles 5 */
    const struct condition *asked;    /* what the read asks, in its answer; or NULL */
    const struct who *told;           /* who does what the clause in front tells: `him`; or NULL */
    const struct who *screener;       /* of the screen that is being read: `his` is somebody else */
    const struct cursor_watch *watch; /* or NULL */
    struct sieves *sieves;            /* of lists of words; or NULL */
    const struct sentence *latest;    /* the one just read, where the next one is looked for */
    bool counted;                     /* one dribble, two dribbles may stand where a verb does */
    bool jotted;                      /* its letters stand for words already: jot.c */
    bool unfolded;                    /* its clauses stand one behind the other: unfold.h */
    bool parted;                      /* it is a part of a line: parts.c */
    int spared;   /* as many phrases of the line have been left out so that it is read: spare.c */
    bool lean;    /* what it can do without has been left out: lean.c */
    int shaped;   /* as many times it has been put another way: reshape.c */
    int *tries;   /* how often that may be tried yet; NULL: it has not begun */
    bool thin;    /* a part of it may be read so: the same */
    bool amends;  /* it goes back on what stands above, and was refused for it */
    bool several; /* in the sentence being read: each of its players has one of `the corners` */
    /* the second reading of a line, as speech: speech.h; NULL: as it stands */
    struct speech *speech;
    struct span remark; /* all that was said moves nobody: set by sentences_read; else empty */
    struct str meant;   /* of a refused line, for its help; or empty: the same */
    size_t refusals;    /* errors reported: when it grew, whoever asked need not report another */
};

/* Where a reader stood, to come back to: what it reported in between is unsaid. */
struct cursor_mark {
    const struct token *at;
    bool full;
    size_t refusals, diags, errors, warnings;
};
struct cursor_mark cursor_mark(const struct cursor *c);
void cursor_back(struct cursor *c, struct cursor_mark mark);

/* Takes what stands in [from, to), and all fillers before it. */
static inline void cursor_take(struct cursor *c, const struct token *from, const struct token *to)
{
    if (c->watch) {
        c->watch->took(c->watch->watcher, from, to);
    }
    c->at = to;
}
/* Articles and words that say nothing stand between any two others. */
static inline const struct token *past_fillers(const struct token *at, const struct token *end)
{
    while (at < end && at->filler) {
        at++;
    }
    return at;
}
/* The next token that counts, or NULL. */
static inline const struct token *cursor_next(const struct cursor *c)
{
    const struct token *at = past_fillers(c->at, c->end);
    return at < c->end ? at : NULL;
}

bool take_str(struct cursor *c, struct str words);
/* Where these words end that stand at the cursor; NULL: they do not. */
const struct token *words_behind(const struct cursor *c, struct str words);
/* The first two letters of the next token that counts (a digit, of a number), which a table is gone
 * through by before its words are compared: most of them fail here. */
struct opening {
    char first, second; /* NUL: it is no word; NUL: it has one letter */
};
static inline struct opening token_opening(const struct token *at)
{
    return (struct opening){at->first, at->text.size > 1 ? at->text.at[1] : '\0'};
}
static inline struct opening cursor_opening(const struct cursor *c)
{
    const struct token *at = past_fillers(c->at, c->end);
    return at == c->end ? (struct opening){'\0', '\0'} : token_opening(at);
}
static inline bool letter_is_plain(char letter)
{
    return letter >= 'a' && letter <= 'z';
}
/* Whether `words` may begin so: true is worth a look, false is certain. */
static inline bool may_open(struct opening opening, const char *words)
{
    bool article = (words[0] == 'a' && (words[1] == ' ' || (words[1] == 'n' && words[2] == ' '))) ||
                   (words[0] == 't' && words[1] == 'h' && words[2] == 'e' && words[3] == ' ');
    if (article || opening.first == '\0') {
        return opening.first != '\0';
    }
    return words[0] == opening.first && (words[1] == opening.second || !letter_is_plain(words[1]) ||
                                         !letter_is_plain(opening.second));
}
/* Takes these words: whole ones, written with hyphens, spaces or neither, articles skipped. */
static inline bool take_words(struct cursor *c, const char *words)
{
    return may_open(cursor_opening(c), words) && take_str(c, str_of(words));
}
/* Whether the token `ahead` places on is this word; articles and hyphens are not counted. */
bool word_is(const struct cursor *c, size_t ahead, const char *word);
bool take_mark(struct cursor *c, char mark);
/* Nothing but articles is left. */
bool cursor_done(const struct cursor *c);
/* The span of the next token that counts; at the end, the empty span behind the last one. */
struct span cursor_span(const struct cursor *c);
/* As written, for messages. */
struct str cursor_text(const struct cursor *c, struct span span);
/* From `from` to the last token taken. */
struct span cursor_taken(const struct cursor *c, const struct token *from);

/* false, unmoved and without a word, when nothing fits. A player's number out of range is reported
 * and taken as read (`refusals` has grown), so that nothing is said twice. */
bool who_read(struct cursor *c, struct who *out);
/* NULL, unmoved, when nothing fits; reports only a place that is half written. `depth` is 0 outside
 * every other place. */
const struct place *place_read(struct cursor *c, int depth);
/* "1 passes to 2", "2 catches", and the states "3 is open", "2 has the ball". Unmoved and without a
 * word when nothing fits. */
bool event_read(struct cursor *c, struct event *out);
/* One condition of a read, without `or`. Unmoved and without a word when nothing fits. */
bool condition_read(struct cursor *c, struct condition *out);
/* One whole sentence up to c->end. On failure it has reported why. */
bool sentence_read(struct cursor *c, struct sentence *out);
/* Every sentence up to c->end: full stops, semicolons, `and VERB`, `, VERB`, `then VERB` part them.
 * Adds those that could be read; false when one was refused (and reported). */
bool sentences_read(struct cursor *c, sentence_list *out);
/* step "…" [as|after|when EVENT] or [after "Title"]: nothing there is true with an empty tie. On
 * failure it has reported why. */
bool step_tie_read(struct cursor *c, struct tie *tie, struct str *after_title);

#endif
