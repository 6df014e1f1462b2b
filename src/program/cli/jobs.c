/* SPDX-License-Identifier: MIT */
/* jobs: see jobs.h. Which thread does which job is left to chance, and is no matter. */
#include "program/cli/jobs.h"

#include <pthread.h>
#include <stdatomic.h>
#include <unistd.h>

enum { THREADS_MOST = 64 };

struct crew {
    atomic_size_t next;
    size_t count;
    void (*job)(void *jobs, size_t i);
    void *jobs;
};

static void *work(void *ctx)
{
    struct crew *crew = ctx;
    for (size_t i = atomic_fetch_add(&crew->next, 1); i < crew->count;
         i = atomic_fetch_add(&crew->next, 1)) {
        crew->job(crew->jobs, i);
    }
    return NULL;
}

void jobs_side_by_side(void *ctx, size_t count, void (*job)(void *jobs, size_t i), void *jobs)
{
    const int *wanted = ctx;
    long threads = *wanted > 0 ? *wanted : sysconf(_SC_NPROCESSORS_ONLN);
    threads = threads > THREADS_MOST ? THREADS_MOST : threads;
    struct crew crew = {.count = count, .job = job, .jobs = jobs};
    pthread_t others[THREADS_MOST];
    int started = 0;
    while (started < threads - 1 && (size_t)started + 1 < count &&
           pthread_create(&others[started], NULL, work, &crew) == 0) {
        started++;
    }
    work(&crew);
    for (int i = 0; i < started; i++) {
        pthread_join(others[i], NULL);
    }
}
