/* SPDX-License-Identifier: MIT */
/* new: a playbook to start from, in a terminal or in a page. A test sees to it that it has nothing
 * to be warned of. */
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/files.h"
#include "program/cli/say.h"
#include "program/cli/site.h"

const char starting_text[] =
    "playbook \"Our playbook\"\n"
    "  level varsity\n"
    "\n"
    "# One play: who stands where, who has the ball, then what happens, a step a picture.\n"
    "# A line is a sentence as it would be said; one that is not understood is marked, with what\n"
    "# to write instead.\n"
    "play \"First Light\"\n"
    "  about \"Swing the ball, then cut behind the defense.\"\n"
    "  start five-out\n"
    "  ball 1\n"
    "  defense man\n"
    "\n"
    "  step \"Swing it\"\n"
    "    1 passes to 2\n"
    "    after 1 passes, 1 cuts to the rim\n"
    "    point 1 \"Look at the ball all the way to the rim.\"\n";

static int put(const struct request *request, const char *path)
{
    struct output output;
    if (strcmp(path, "-") != 0 && access(path, F_OK) == 0) {
        say(request->command, "%s is there already: nothing was written", shown(path));
        return STATUS_FILE;
    }
    if (!output_open(&output, NULL, request->command, path, false)) {
        return STATUS_FILE;
    }
    output.writer.write(&output, starting_text, sizeof starting_text - 1);
    return output_named(&output, path);
}

static int run(const struct request *request)
{
    return put(request, request->word_count ? request->words[0] : "playbook.play");
}

const struct command command_new = {
    "new", "[FILE]", "write a starting playbook", NULL, "  courtwright new kites.play\n", 0,
    1,     run};
