/* SPDX-License-Identifier: MIT */
/* texts: the published plays as one book, to read, draw or hand to the program. */
#include <stdio.h>

#include "worked.h"

int main(void)
{
    const struct worked_table *tables[] = {&worked_offense, &worked_defense, &worked_break};
    for (size_t t = 0; t < sizeof tables / sizeof *tables; t++) {
        for (size_t i = 0; i < tables[t]->count; i++) {
            printf("%s\n", tables[t]->at[i].text);
        }
    }
    return 0;
}
