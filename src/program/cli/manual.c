/* SPDX-License-Identifier: MIT */
/* manual: a program of the build: prints the man pages and the completions of the shell from the
 * same tables that the program goes by. Usage: manual man1|man5|bash */
#include <stdio.h>
#include <string.h>

#include "program/cli/options.h"

static const struct command *const commands[] = {
#define COMMAND(name) &command_##name,
#define LATER(name)
#include "program/cli/commands.def"
#undef COMMAND
#undef LATER
};
enum { COMMANDS = sizeof commands / sizeof *commands };

/* Text as roff wants it. */
static void put(const char *text)
{
    bool line_start = true;
    for (; *text; text++) {
        if (line_start && (*text == '.' || *text == '\'')) {
            fputs("\\&", stdout);
        }
        line_start = *text == '\n';
        if (*text == '\\') {
            fputs("\\e", stdout);
        } else if (*text == '-') {
            fputs("\\-", stdout);
        } else {
            putchar(*text);
        }
    }
}

static void put_bold(const char *text)
{
    fputs("\\fB", stdout);
    put(text);
    fputs("\\fR", stdout);
}

static void put_option(const struct option_row *row)
{
    char letter[] = {'-', row->letter, '\0'}, name[64];
    fputs(".TP\n", stdout);
    if (row->letter) {
        put_bold(letter);
        fputs(", ", stdout);
    }
    snprintf(name, sizeof name, "--%s", row->name);
    put_bold(name);
    if (row->value) {
        fputs(" \\fI", stdout);
        put(row->value);
        fputs("\\fR", stdout);
    }
    putchar('\n');
    put(row->help);
    putchar('\n');
}

static void put_command(const struct command *command)
{
    fputs(".SS ", stdout);
    put(command->name);
    putchar(' ');
    put(command->arguments);
    putchar('\n');
    put(command->what);
    fputs(".\n", stdout);
    for (const struct option_row *row = command->options; row && row->kind != OPTION_END; row++) {
        if (row->kind != OPTION_LATER) {
            put_option(row);
        }
    }
    fputs(".PP\n.nf\n", stdout);
    put(command->example);
    fputs(".fi\n", stdout);
}

static void print_commands(void)
{
    printf(".TH COURTWRIGHT 1 \"\" \"courtwright %s\" \"User Commands\"\n", courtwright_version());
    fputs(".SH NAME\ncourtwright \\- basketball plays from text: run on one clock, checked, drawn\n"
          ".SH SYNOPSIS\n.B courtwright\n\\fICOMMAND\\fR [\\fIFILE.play\\fR | \\-] "
          "[\\fIoptions\\fR]\n"
          ".SH DESCRIPTION\nReads plays as a coach says them, runs them on one clock, says what a "
          "good assistant would\n"
          "see, and draws numbered diagrams and pages for players. The language is told in\n.BR "
          "courtwright (5).\n"
          ".SH COMMANDS\n",
          stdout);
    for (size_t i = 0; i < COMMANDS; i++) {
        put_command(commands[i]);
    }
    fputs(
        ".SH FILES THAT COME OUT\nWithout \\fB\\-o\\fR they are named after the play or the "
        "book, in the folder one stands "
        "in, and their names are printed. A name may hold {play}, {step}, {n} and {player}; two "
        "that would be the same "
        "get \\-2, \\-3. A file is written beside its place and then moved there; what was read "
        "is never written over "
        "but by \\fBtidy \\-\\-write\\fR.\n"
        ".SH POSITIONS OVER TIME\n\\fBcourtwright positions\\fR writes one JSON object a play: at "
        "\\-\\-rate places a second (30 if none is given, at most 120) and at the end of each "
        "step, where everybody is and how fast, in metres and metres a second from the point under "
        "the ring; where the ball is, how high and who has it; and every event at its own time. "
        "Between two samples the place is the cubic Hermite curve through both: ten a second give "
        "the run back to within a centimetre. \\fBcourtwright positions \\-\\-schema\\fR prints "
        "the JSON schema, which tells each field; it is installed as "
        "share/courtwright/positions.schema.json.\n"
        ".SH FINDINGS AS JSON\n\\fBcourtwright check \\-\\-json\\fR writes one JSON object a "
        "line for each thing said, and with \\fB\\-\\-tolerance\\fR one for each step. "
        "\\fBcourtwright check \\-\\-schema\\fR prints the JSON schema of a line; it is "
        "installed as share/courtwright/check.schema.json.\n"
        ".SH EXIT STATUS\n.TP\n0\nfine\n.TP\n1\nan error in the text, or with "
        "\\fB\\-\\-strict\\fR a warning\n"
        ".TP\n2\nthe command was used wrongly\n.TP\n3\na file could not be read or written\n"
        ".SH ENVIRONMENT\n.TP\nNO_COLOR, TERM\nno color when the first is set or the second is "
        "dumb\n"
        ".TP\nSOURCE_DATE_EPOCH\nthe date a PDF is given; without it, none\n"
        ".SH SEE ALSO\n.BR courtwright (5)\n",
        stdout);
}

static bool put_entry(void *ctx, const struct courtwright_entry *entry)
{
    (void)ctx;
    fputs(".TP\n", stdout);
    put_bold(entry->word);
    putchar('\n');
    put(*entry->what ? entry->what : entry->word);
    if (entry->list == COURTWRIGHT_VERBS) {
        fputs(". ", stdout);
        put(entry->why);
    }
    if (*entry->limit) {
        fputs(" (", stdout);
        put(entry->limit);
        putchar(')');
    }
    putchar('\n');
    return true;
}

static void print_language(void)
{
    static const char *const headings[COURTWRIGHT_LIST_COUNT] = {
        [COURTWRIGHT_CHECKS] = "CHECKS",         [COURTWRIGHT_ERRORS] = "ERRORS",
        [COURTWRIGHT_VERBS] = "VERBS",           [COURTWRIGHT_PLACES] = "PLACES",
        [COURTWRIGHT_FORMATIONS] = "FORMATIONS", [COURTWRIGHT_SETTINGS] = "SETTINGS",
        [COURTWRIGHT_COURTS] = "COURTS",         [COURTWRIGHT_LEVELS] = "LEVELS",
        [COURTWRIGHT_SHEETS] = "SHEETS",         [COURTWRIGHT_THEMES] = "THEMES",
        [COURTWRIGHT_WORDS] = "OTHER WORDS",     [COURTWRIGHT_ZONES] = "ZONES AND PRESSES",
    };
    static const enum courtwright_list order[] = {
        COURTWRIGHT_SETTINGS, COURTWRIGHT_VERBS, COURTWRIGHT_PLACES, COURTWRIGHT_FORMATIONS,
        COURTWRIGHT_ZONES,    COURTWRIGHT_WORDS, COURTWRIGHT_COURTS, COURTWRIGHT_LEVELS,
        COURTWRIGHT_CHECKS,   COURTWRIGHT_ERRORS};
    printf(".TH COURTWRIGHT 5 \"\" \"courtwright %s\" \"File Formats\"\n", courtwright_version());
    fputs(".SH NAME\ncourtwright \\- the play language\n.SH DESCRIPTION\nA file of plays is plain "
          "text in UTF\\-8; its "
          "name ends in .play or .txt. One sentence is usually one movement and one line in the "
          "diagram:\n"
          ".PP\n.nf\nplay \"First Light\"\n  start five\\-out\n  ball 1\n  defense man\n\n  step "
          "\"Swing it\"\n"
          "    1 passes to 2\n    after 1 passes, 1 cuts to the rim\n.fi\n.PP\nHeadings (playbook, "
          "chapter, team, "
          "action, play, drill, step, read, option) open blocks; settings stand before the first "
          "step. # begins a "
          "comment. \\fBcourtwright explain\\fR \\fIWORD\\fR tells more of each word below.\n",
          stdout);
    for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
        printf(".SH %s\n", headings[order[i]]);
        courtwright_list(order[i], NULL, put_entry, NULL);
    }
    fputs(".SH SEE ALSO\n.BR courtwright (1)\n", stdout);
}

static void put_completions(const struct command *command)
{
    printf("    %s) words='--help --color", command->name);
    for (const struct option_row *row = command->options; row && row->kind != OPTION_END; row++) {
        if (row->kind != OPTION_LATER) {
            printf(" --%s", row->name);
        }
    }
    fputs("' ;;\n", stdout);
}

static void put_choices(const struct command *command)
{
    for (const struct option_row *row = command->options; row && row->kind != OPTION_END; row++) {
        if (row->kind != OPTION_CHOICE) {
            continue;
        }
        printf("    %s--%s) words='", command->name, row->name);
        for (const char *at = row->value; *at; at++) {
            putchar(*at == '|' ? ' ' : *at);
        }
        fputs("' ;;\n", stdout);
    }
}

static void print_bash(void)
{
    fputs("# SPDX-License-Identifier: MIT\n# Completions for bash; made from the program's own "
          "tables.\n"
          "_courtwright()\n{\n    local word=${COMP_WORDS[COMP_CWORD]} "
          "last=${COMP_WORDS[COMP_CWORD-1]} words=\n"
          "    local command=${COMP_WORDS[1]}\n    COMPREPLY=()\n    if ((COMP_CWORD == 1)); then\n"
          "        COMPREPLY=($(compgen -W '",
          stdout);
    for (size_t i = 0; i < COMMANDS; i++) {
        printf("%s%s", i ? " " : "", commands[i]->name);
    }
    fputs(" --help --version' -- \"$word\"))\n        return\n    fi\n    case $command$last in\n",
          stdout);
    for (size_t i = 0; i < COMMANDS; i++) {
        put_choices(commands[i]);
    }
    fputs("    listlist) words='plays", stdout);
    for (int list = 0; list < COURTWRIGHT_LIST_COUNT; list++) {
        printf(" %s", courtwright_list_name((enum courtwright_list)list));
    }
    fputs("' ;;\n    esac\n    if [[ -z $words && $word == -* ]]; then\n    case $command in\n",
          stdout);
    for (size_t i = 0; i < COMMANDS; i++) {
        put_completions(commands[i]);
    }
    fputs("    esac\n    fi\n    if [[ -n $words ]]; then\n        COMPREPLY=($(compgen -W "
          "\"$words\" -- \"$word\"))\n"
          "    else\n        COMPREPLY=($(compgen -f -- \"$word\"))\n    fi\n}\n"
          "complete -o filenames -F _courtwright courtwright\n",
          stdout);
}

int main(int argc, char **argv)
{
    static const struct {
        const char *word;
        void (*print)(void);
    } pages[] = {{"man1", print_commands}, {"man5", print_language}, {"bash", print_bash}};
    for (size_t i = 0; argc == 2 && i < sizeof pages / sizeof *pages; i++) {
        if (strcmp(argv[1], pages[i].word) == 0) {
            pages[i].print();
            return fflush(stdout) == 0 && !ferror(stdout) ? STATUS_FINE : STATUS_FILE;
        }
    }
    fputs("usage: manual man1|man5|bash\n", stderr);
    return STATUS_USE;
}
