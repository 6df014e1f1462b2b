/* SPDX-License-Identifier: MIT */
/* crest_try: what is wrong with a crest, found out where it can do no harm. */
#ifndef PROGRAM_CLI_CREST_TRY_H
#define PROGRAM_CLI_CREST_TRY_H

#include <stddef.h>

/* What is wrong with it, to stand behind "the crest NAME", until the next call; NULL: nothing. */
const char *crest_try(const void *bytes, size_t size);

#endif
