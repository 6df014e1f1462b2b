/* SPDX-License-Identifier: MIT */
/* whole_file: what a test or a bench reads from the disk. */
#ifndef TESTS_UNIT_WHOLE_FILE_H
#define TESTS_UNIT_WHOLE_FILE_H

#include "base/str.h"

/* All of a file, in the arena; false: it cannot be opened, and `out` is empty. */
bool whole_file(struct arena *arena, const char *path, struct str *out);
/* The same; what cannot be opened is named on standard error, and is empty. */
struct str whole_file_or_said(struct arena *arena, const char *path);

#endif
