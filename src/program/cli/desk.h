/* SPDX-License-Identifier: MIT */
/* desk: the one file that is open on the page: how it lies on the disk, and how it is saved so that
 * nobody's work is lost. Knows no page and no request. */
#ifndef PROGRAM_CLI_DESK_H
#define PROGRAM_CLI_DESK_H

#include "program/cli/files.h"

enum { DESK_VERSION = 64 };

/* An include that was looked for. */
struct desk_include {
    char *from, *path; /* in which text, and as it stands there */
    enum courtwright_fetched fetched;
    char *name; /* of the file, as messages have it; NULL where there is none */
    struct bytes text;
};

/* How the file lies there at one moment. */
struct desk_look {
    bool gone;       /* there is no file: the text is empty */
    bool whole;      /* all that lies there is in `text` */
    const char *why; /* it cannot be read, or is no text; NULL: it can */
    struct bytes text;
    struct desk_include *includes;
    size_t include_count;
    /* Two parts with a hyphen between: of the file's own bytes ("none": there is no file), and of
     * those of its includes. The same bytes, the same version. */
    char version[DESK_VERSION];
};

/* A page's text beside the file, of a quarrel that goes on. */
struct desk_copy {
    char *page; /* as it calls itself */
    char *path;
    char quarrel[DESK_VERSION]; /* with which version of the file */
};

struct desk {
    const char *command, *path;
    const char *name; /* without its folder */
    /* The one before: what has not changed since is not read through again. */
    struct desk_look last;
    /* The last text that lay there; NULL `at`: there never was one. */
    struct bytes known;
    struct desk_copy *copies; /* one for each page at most */
    size_t copy_count;
};

/* False, and said, when there is no place for such a file. */
bool desk_open(struct desk *desk, const char *command, const char *path);
void desk_close(struct desk *desk);

/* How it lies there now; the desk's own until the next look or save. */
const struct desk_look *desk_look(struct desk *desk);
/* Whether it lay there before and is gone, or its folder is: then `known` is what there was. */
bool desk_is_lost(const struct desk *desk, const struct desk_look *look);
/* A number of the file, the same whenever it is opened. */
unsigned desk_number(const struct desk *desk);
/* As desk_look for another thread, to be freed. */
void desk_look_anew(const struct desk *desk, struct desk_look *look);
void desk_look_free(struct desk_look *look);
/* What the version would be, were this the file's text and all else as in `look`. */
void desk_version_of(char version[DESK_VERSION], const struct bytes *text,
                     const struct desk_look *look);
/* Whether two versions are of the same bytes of the file, whatever its includes. */
bool desk_same_file(const char *version, const char *other);
/* Whether it is spelled as versions are. */
bool desk_is_version(const char *version);
/* Whether bytes are a text that a page can show: UTF-8 without a NUL. */
bool desk_is_text(const struct bytes *text);

/* Why it may not be saved, to be freed; NULL: it may. */
char *desk_locked(const struct desk *desk);

enum desk_saved {
    DESK_SAVED,
    DESK_CHANGED, /* it is another one than `version`: nothing was written, but the text was kept */
    DESK_FAILED   /* `why` tells; the file is as it was */
};
struct desk_saving {
    const char *page;    /* who saves: what two pages wrote is never kept in one place */
    const char *version; /* that the page knew */
    bool mine;           /* of that version, what lies there is kept beside it, and then replaced */
    struct bytes text;
    const char *why; /* it failed */
    char *kept;      /* what was kept beside goes by this name; to be freed; NULL: nothing was */
};
enum desk_saved desk_save(struct desk *desk, struct desk_saving *saving);

#endif
