/* SPDX-License-Identifier: MIT */
/* empty: does nothing, linked to all that the program is linked to. What it costs to start it is
 * what the machine and the libraries cost; the bench prints times as ratios to it. */
#include <cairo.h>
#include <courtwright/courtwright.h>
#include <jansson.h>

int main(int argc, char **argv)
{
    (void)argv;
    /* Never true: it only keeps the libraries linked. */
    if (argc > 1000) {
        return cairo_version() + (int)courtwright_version()[0] + (json_null() != NULL);
    }
    return 0;
}
