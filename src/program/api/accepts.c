/* SPDX-License-Identifier: MIT */
/* accepts: an accept line that silences nothing is noted: what it was written for is mended, or
 * stands in another step. Looks over the whole book, since plays share steps and their lines. */
#include "program/api/handle.h"

/* The same line of the text: its reason was copied from there and from nowhere else. */
static bool is_its_reason(const struct point *accept, struct str reason)
{
    return reason.at == accept->text.at && reason.size == accept->text.size;
}

static bool holds(const point_list *accepts, const struct point *accept)
{
    for (size_t i = 0; i < accepts->count; i++) {
        if (is_its_reason(accept, accepts->at[i].text)) {
            return true;
        }
    }
    return false;
}

/* A play that could not be run has the line too: nobody can say what it would silence there. */
static bool stands_in(const struct play *play, const struct point *accept)
{
    bool found = holds(&play->accepts, accept);
    for (size_t s = 0; s < play->steps.count && !found; s++) {
        const struct step *step = &play->steps.at[s];
        found = holds(&step->accepts, accept);
        for (size_t b = 0; b < step->branches.count && !found; b++) {
            found = holds(&step->branches.at[b].accepts, accept);
        }
    }
    return found;
}

static bool silences(const struct compiled *compiled, const struct point *accept)
{
    if (!compiled->ran) {
        return stands_in(compiled->play, accept);
    }
    for (size_t i = 0; i < compiled->findings.count; i++) {
        const struct finding *finding = &compiled->findings.at[i];
        if (finding->accepted && is_its_reason(accept, finding->reason)) {
            return true;
        }
    }
    return false;
}

/* Mostly it silences something in the play it stands in, which is looked at first; else in one that
 * shares the step. */
static bool silences_somewhere(const struct courtwright *book, size_t own,
                               const struct point *accept)
{
    bool found = silences(&book->plays[own], accept);
    for (size_t p = 0; p < book->play_count && !found; p++) {
        found = silences(&book->plays[p], accept);
    }
    return found;
}

static void note_idle(struct courtwright *book, size_t own, const point_list *accepts)
{
    for (size_t i = 0; i < accepts->count; i++) {
        const struct point *accept = &accepts->at[i];
        const struct check_row *row = check_find(accept->word);
        bool idle = row && row->severity != SEVERITY_ERROR; /* else it has been said */
        if (idle && !book->diags.full && !silences_somewhere(book, own, accept)) {
            struct diag *diag = diag_add(&book->diags, DIAG_CHECK_ACCEPT_IDLE, accept->span,
                                         "there is no %s here to accept", row->id);
            diag_help(&book->diags, diag, "take the line out, or move it to the step it is about");
        }
    }
}

void accepts_note_idle(struct courtwright *book)
{
    for (size_t p = 0; p < book->play_count; p++) {
        const struct play *play = book->plays[p].play;
        note_idle(book, p, &play->accepts);
        for (size_t s = 0; s < play->steps.count; s++) {
            const struct step *step = &play->steps.at[s];
            note_idle(book, p, &step->accepts);
            for (size_t b = 0; b < step->branches.count; b++) {
                note_idle(book, p, &step->branches.at[b].accepts);
            }
        }
    }
}
