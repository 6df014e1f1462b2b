/* SPDX-License-Identifier: MIT */
/* desk_parts: what looking at the file and saving it have in common. Private to desk. */
#ifndef PROGRAM_CLI_DESK_PARTS_H
#define PROGRAM_CLI_DESK_PARTS_H

#include "program/cli/desk.h"

/* The first part of a version: of the file alone. */
void desk_name_file(char *out, size_t room, const struct desk_look *look);
bool desk_same_text(const struct bytes *a, const struct bytes *b);
const char *desk_without_folder(const char *path);
/* The pages' copies beside the file are their coach's own from now on. */
void desk_forget_copies(struct desk *desk);

#endif
