/* SPDX-License-Identifier: MIT */
/* paper_key: the key of the lines that a sheet's pictures have: a sample and its word each. Takes
 * what they use; must not know which sheet it is. */
#include "page/web/paper.h"
#include "page/web/pages.h"
#include "picture/svg/svg.h"

#define HIGH 14.0 /* pt: a sample; the tallest is the ringed numeral */
#define OVER 1.0  /* pt: what a stroke reaches past its sample's ends */

static const struct {
    enum scene_class class;
    double length, tight; /* pt */
} rows[] = {
#define KEY_ROW(class, length, tight, phone) {class, length, tight},
#include "picture/scene/key_rows.def"
#undef KEY_ROW
};

static void put_sample(const struct html *html, enum scene_class class, double length, bool brief,
                       struct str salt)
{
    struct scene sample = {.width = length + 2 * OVER, .height = HIGH, .theme = THEME_PRINT};
    sample.title = str_of(scene_key_word(class, brief));
    scene_key_sample(html->arena, &sample, class, vec2_of(OVER, HIGH / 2), length);
    struct svg_options how = {.salt = salt};
    html_put(html, "<span>");
    svg_write(html->arena, &sample, &how, html->writer);
    html_put(html, " <span aria-hidden=\"true\">%s</span></span>\n", sample.title);
}

void paper_key(const struct html *html, unsigned uses, struct str salt)
{
    enum { ROWS = sizeof rows / sizeof *rows, LONG = 7 }; /* so many stand in one line at length */
    int count = 0;
    for (size_t i = 0; i < ROWS; i++) {
        count += (uses >> rows[i].class & 1u) != 0;
    }
    bool brief = count > LONG;
    html_put(html, "<p class=\"key\">");
    for (size_t i = 0; i < ROWS; i++) {
        if (uses & 1u << rows[i].class) {
            put_sample(html, rows[i].class, brief ? rows[i].tight : rows[i].length, brief, salt);
        }
    }
    html_put(html, "</p>\n");
}
