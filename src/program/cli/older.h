/* SPDX-License-Identifier: MIT */
/* older: sheets of ours that an earlier time left in a folder. */
#ifndef PROGRAM_CLI_OLDER_H
#define PROGRAM_CLI_OLDER_H

#include "program/cli/naming.h"

/* Says which sheets of this book lie in the folder of what was written and are not among it: of
 * who has left the team, or by another name. Nothing is taken away. */
void older_tell(const struct request *request, const struct file_names *written);

#endif
