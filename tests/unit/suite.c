/* SPDX-License-Identifier: MIT */
#include "suite.h"

#include <stdlib.h>

int suite_main(Suite *suite)
{
    SRunner *runner = srunner_create(suite);
    srunner_set_tap(runner, "-");
    srunner_run_all(runner, CK_SILENT);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
