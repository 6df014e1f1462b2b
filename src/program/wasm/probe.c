/* SPDX-License-Identifier: MIT */
/* probe: whether this machine can build WebAssembly: a compiler, a C library, a linker, a runtime.
 */
#include <stdlib.h>
#include <string.h>

__attribute__((export_name("probe"))) size_t probe(const char *text)
{
    char *copy = malloc(strlen(text) + 1);
    return copy ? strlen(strcpy(copy, text)) : 0;
}
