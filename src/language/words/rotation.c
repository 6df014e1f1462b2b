/* SPDX-License-Identifier: MIT */
/* rotation: how a drill goes on: 5 reps then swap lines, first to 7 stays on, offense to defense.
 * It is of the drill and of no player in it, and moves nobody. */
#include "language/words/grammar.h"
#include "language/words/reader.h"

static const char *const turns[] = {"reps",
                                    "rep each",
                                    "swap lines",
                                    "switch lines",
                                    "change lines",
                                    "rotate lines",
                                    "next line",
                                    "next group",
                                    "new group",
                                    "next pair",
                                    "stays on",
                                    "stay on",
                                    "stay on floor",
                                    "first to",
                                    "play to",
                                    "best of",
                                    "in a row",
                                    "winners stay",
                                    "winner stays",
                                    "losers run",
                                    "loser runs",
                                    "losers out",
                                    "losers off",
                                    "offense to defense",
                                    "defense to offense",
                                    "defense out",
                                    "offense out",
                                    "defense off",
                                    "offense off",
                                    "new four in",
                                    "new three in",
                                    "new five in",
                                    "four new in",
                                    "switch sides",
                                    "swap sides",
                                    "change sides",
                                    "both sides",
                                    "other side",
                                    "each side",
                                    "go again",
                                    "makes each",
                                    "makes apiece",
                                    "stops in a row",
                                    "three stops",
                                    "rotate on",
                                    "rotate after",
                                    "rotate every",
                                    "everybody rotates",
                                    "then rotate",
                                    "switch after",
                                    "switch every",
                                    "switch on whistle",
                                    "rotate on whistle",
                                    "in pairs",
                                    "with partner",
                                    "make it take it",
                                    "new offense",
                                    "new defense",
                                    "game to",
                                    "timed",
                                    "end of the line",
                                    "back of the line",
                                    "jump in",
                                    "keep score",
                                    "one point",
                                    "point for each",
                                    "down and back",
                                    "full speed both ways",
                                    NULL};

bool rotation_is(const struct cursor *c)
{
    const struct token *first = cursor_next(c);
    static const char *const counted[] = {"reps",   "rep",   "makes", "stops",  "shots", "lines",
                                          "groups", "teams", "each",  "points", "times", NULL};
    bool player = first && first->kind == TOKEN_NUMBER &&
                  !(first + 1 < c->end && token_is_among(first + 1, counted));
    if (!first || player || first->kind == TOKEN_DEFENDER || subject_verb_is(c)) {
        return false;
    }
    for (struct cursor at = *c; at.at < at.end; at.at++) {
        if (at.at->kind == TOKEN_DEFENDER || at.at->kind == TOKEN_QUOTED) {
            return false;
        }
        at.watch = NULL;
        if (word_among(&at, turns)) {
            return true;
        }
    }
    return false;
}
