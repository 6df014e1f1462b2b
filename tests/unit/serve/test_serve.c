/* SPDX-License-Identifier: MIT */
/* serve: the gate, the crowd and the rate, without a socket. */
#include <stdio.h>
#include <string.h>

#include "program/serve/crowd.h"
#include "program/serve/gate.h"
#include "program/serve/rate.h"
#include "suite.h"

/* ---- The gate -------------------------------------------------------------------------------- */

static struct gate gate;
static char path[120];

static void open_gate(void)
{
    static const unsigned char chance[GATE_TOKEN / 2] = {0x00, 0x9f, 0xff, 0x10, 0xab};
    gate_init(&gate, 40123, chance);
}

static const char *below(const char *address)
{
    snprintf(path, sizeof path, "/%s/%s", gate.token, address);
    return path;
}

/* As the page itself asks. */
static struct gate_request asks(const char *method, const char *address)
{
    return (struct gate_request){.method = method,
                                 .path = below(address),
                                 .host = "127.0.0.1:40123",
                                 .origin = "http://127.0.0.1:40123",
                                 .from = "same-origin"};
}

static void turned_away(struct gate_request request, unsigned status)
{
    struct gate_verdict verdict = gate_judge(&gate, &request);
    ck_assert_ptr_null(verdict.route);
    ck_assert_uint_eq(verdict.status, status);
    ck_assert(*verdict.why);
}

static void let_in(struct gate_request request, enum serve_what what)
{
    struct gate_verdict verdict = gate_judge(&gate, &request);
    ck_assert_ptr_nonnull(verdict.route);
    ck_assert_int_eq(verdict.route->what, what);
    ck_assert(verdict.known);
}

START_TEST(the_token_is_its_bytes_in_hexadecimal)
{
    ck_assert_str_eq(gate.token, "009fff10ab0000000000000000000000");
    ck_assert_str_eq(gate.host, "127.0.0.1:40123");
    ck_assert_str_eq(gate.origin, "http://127.0.0.1:40123");
}
END_TEST

START_TEST(the_page_gets_each_address_there_is)
{
    let_in(asks("GET", ""), SERVE_PAGE);
    let_in(asks("GET", "file"), SERVE_READ);
    let_in(asks("PUT", "file"), SERVE_SAVE);
    let_in(asks("POST", "sheet"), SERVE_SHEET);
}
END_TEST

START_TEST(an_address_typed_by_hand_is_let_in_but_changes_nothing)
{
    struct gate_request request = asks("GET", "");
    request.origin = NULL;
    request.from = "none";
    let_in(request, SERVE_PAGE);
    request.from = NULL; /* an old browser, a program */
    let_in(request, SERVE_PAGE);
    request = asks("PUT", "file");
    request.origin = NULL;
    turned_away(request, 403);
}
END_TEST

START_TEST(any_token_but_the_one_is_no_address)
{
    struct gate_request request = asks("GET", "file");
    for (size_t i = 1; i <= GATE_TOKEN; i++) {
        below("file");
        path[i] ^= 1;
        turned_away(request, 404);
        ck_assert(!gate_judge(&gate, &request).known);
    }
    static const char *const others[] = {"", "/", "/file", "file", "//", "/../file"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        request.path = others[i];
        turned_away(request, 404);
    }
    snprintf(path, sizeof path, "/%.31s/file", gate.token); /* short of one digit */
    request.path = path;
    turned_away(request, 404);
    snprintf(path, sizeof path, "/%s", gate.token); /* and without what stands behind it */
    turned_away(request, 404);
}
END_TEST

START_TEST(a_ticket_leads_to_the_page_and_to_nothing_else)
{
    static const unsigned char chance[GATE_TOKEN / 2] = {7};
    struct gate_request request = asks("GET", "");
    snprintf(path, sizeof path, "/%.32s", "00000000000000000000000000000000");
    ck_assert(!gate_judge(&gate, &request).ticket); /* there is none yet */
    gate_allow_once(&gate, chance);
    snprintf(path, sizeof path, "/%s", gate.ticket);
    ck_assert(gate_judge(&gate, &request).ticket);
    ck_assert(!gate_judge(&gate, &request).known);
    request.host = "kites.example:40123";
    ck_assert(!gate_judge(&gate, &request).ticket);
    turned_away(request, 403);
    request.host = gate.host;
    request.method = "PUT";
    turned_away(request, 404);
    request.method = "GET";
    snprintf(path, sizeof path, "/%s/", gate.ticket);
    turned_away(request, 404);
    snprintf(path, sizeof path, "/%s/file", gate.ticket);
    turned_away(request, 404);
}
END_TEST

START_TEST(no_path_but_the_few_means_anything)
{
    static const char *const others[] = {"kites.play",   "../file", "file/",      "/file",
                                         "file/../file", "FILE",    "sheet/x",    ".",
                                         "..",           "?",       "etc/passwd", "file "};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        turned_away(asks("GET", others[i]), 404);
    }
}
END_TEST

START_TEST(another_method_is_told_which_there_are)
{
    struct gate_request request = asks("POST", "file");
    turned_away(request, 405);
    ck_assert_str_eq(gate_judge(&gate, &request).allow, "GET, PUT");
    request = asks("PUT", "");
    turned_away(request, 405);
    ck_assert_str_eq(gate_judge(&gate, &request).allow, "GET");
    static const char *const others[] = {"HEAD",    "DELETE", "OPTIONS", "TRACE",
                                         "CONNECT", "get",    "X",       ""};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++) {
        turned_away(asks(others[i], "file"), 405);
    }
}
END_TEST

START_TEST(a_name_that_was_made_to_point_here_is_turned_away)
{
    static const char *const hosts[] = {NULL,
                                        "",
                                        "kites.example:40123",
                                        "127.0.0.1",
                                        "127.0.0.1:40124",
                                        "localhost:40123",
                                        "127.0.0.1:40123.kites.example",
                                        "127.0.0.1:401230"};
    for (size_t i = 0; i < sizeof hosts / sizeof *hosts; i++) {
        struct gate_request request = asks("GET", "");
        request.host = hosts[i];
        turned_away(request, 403);
        ck_assert(!gate_judge(&gate, &request).known);
    }
}
END_TEST

START_TEST(the_page_of_another_site_is_turned_away)
{
    static const char *const origins[] = {"",
                                          "null",
                                          "http://kites.example",
                                          "https://127.0.0.1:40123",
                                          "http://127.0.0.1:40124",
                                          "http://127.0.0.1",
                                          "http://127.0.0.1:40123/",
                                          "http://127.0.0.1:40123.kites.example"};
    for (size_t i = 0; i < sizeof origins / sizeof *origins; i++) {
        struct gate_request request = asks("PUT", "file");
        request.origin = origins[i];
        turned_away(request, 403);
        request = asks("GET", "file");
        request.origin = origins[i];
        turned_away(request, 403);
    }
    struct gate_request request = asks("GET", "file");
    request.origin = NULL;
    request.from = "cross-site";
    turned_away(request, 403);
    request.from = "same-site"; /* another port of this machine */
    turned_away(request, 403);
    request = asks("GET", ""); /* but a link may lead to the page */
    request.origin = NULL;
    request.from = "cross-site";
    let_in(request, SERVE_PAGE);
}
END_TEST

/* ---- The crowd ------------------------------------------------------------------------------- */

static struct crowd crowd;

static void fill(int64_t now)
{
    crowd_init(&crowd);
    for (int i = 0; i < CROWD_MOST; i++) {
        ck_assert_ptr_nonnull(crowd_enter(&crowd, 100 + i, now + i));
    }
}

START_TEST(a_full_house_takes_nobody_more)
{
    fill(0);
    ck_assert_int_eq(crowd.count, CROWD_MOST);
    ck_assert_ptr_null(crowd_enter(&crowd, 7, 0));
    crowd_leave(&crowd, &crowd.seats[9]);
    struct crowd_seat *seat = crowd_enter(&crowd, 7, 0);
    ck_assert_ptr_eq(seat, &crowd.seats[9]);
    ck_assert_int_eq(seat->fd, 7);
}
END_TEST

START_TEST(the_longest_stranger_yields_to_a_newcomer)
{
    fill(1000);
    ck_assert_ptr_null(crowd_yields(&crowd, 1000 + CROWD_SETTLED_MS - 1));
    ck_assert_ptr_eq(crowd_yields(&crowd, 1000 + CROWD_SETTLED_MS), &crowd.seats[0]);
    ck_assert_ptr_eq(crowd_yields(&crowd, 9000), &crowd.seats[0]);
    crowd.seats[0].leaving = true;
    ck_assert_ptr_eq(crowd_yields(&crowd, 9000), &crowd.seats[1]);
}
END_TEST

START_TEST(who_has_shown_the_token_yields_to_nobody)
{
    fill(0);
    for (int i = 0; i < CROWD_MOST; i++) {
        crowd_knows(&crowd.seats[i]);
    }
    ck_assert_ptr_null(crowd_yields(&crowd, 1000000));
    ck_assert_ptr_null(crowd_late(&crowd, 1000000));
    ck_assert_int_eq(crowd_wait(&crowd, 1000000), -1);
}
END_TEST

START_TEST(a_stranger_has_five_seconds)
{
    crowd_init(&crowd);
    ck_assert_int_eq(crowd_wait(&crowd, 0), -1);
    struct crowd_seat *seat = crowd_enter(&crowd, 7, 1000);
    ck_assert_int_eq(crowd_wait(&crowd, 1000), CROWD_STRANGER_MS);
    ck_assert_ptr_null(crowd_late(&crowd, 1000 + CROWD_STRANGER_MS - 1));
    ck_assert_ptr_eq(crowd_late(&crowd, 1000 + CROWD_STRANGER_MS), seat);
    ck_assert_int_eq(crowd_wait(&crowd, 90000), 0);
    seat->leaving = true; /* is not told twice */
    ck_assert_ptr_null(crowd_late(&crowd, 90000));
}
END_TEST

START_TEST(a_text_that_has_begun_to_arrive_must_be_whole_in_time)
{
    crowd_init(&crowd);
    struct crowd_seat *seat = crowd_enter(&crowd, 7, 0);
    crowd_knows(seat);
    crowd_begins(seat, 3000);
    ck_assert_ptr_null(crowd_late(&crowd, 3000 + CROWD_REQUEST_MS - 1));
    ck_assert_ptr_eq(crowd_late(&crowd, 3000 + CROWD_REQUEST_MS), seat);
    crowd_ends(seat);
    ck_assert_ptr_null(crowd_late(&crowd, 1000000));
}
END_TEST

/* ---- The rate -------------------------------------------------------------------------------- */

static int taken_at_once(struct rate *rate, int64_t now)
{
    int count = 0;
    while (count < 1000 && rate_takes(rate, now)) {
        count++;
    }
    return count;
}

START_TEST(so_many_at_once_and_then_so_many_a_second)
{
    struct rate rate;
    rate_init(&rate, 50, 20, 0);
    ck_assert_int_eq(taken_at_once(&rate, 0), 50);
    ck_assert_int_eq(taken_at_once(&rate, 49), 0); /* one in 50 ms */
    ck_assert_int_eq(taken_at_once(&rate, 50), 1);
    ck_assert_int_eq(taken_at_once(&rate, 1050), 20);
    ck_assert_int_eq(taken_at_once(&rate, 1000000000000), 50); /* it does not pile up */
    ck_assert_int_eq(taken_at_once(&rate, 0), 0);              /* nor fall below nothing */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("serve");
    TCase *tcase = tcase_create("gate");
    tcase_add_checked_fixture(tcase, open_gate, NULL);
    tcase_add_test(tcase, the_token_is_its_bytes_in_hexadecimal);
    tcase_add_test(tcase, the_page_gets_each_address_there_is);
    tcase_add_test(tcase, an_address_typed_by_hand_is_let_in_but_changes_nothing);
    tcase_add_test(tcase, any_token_but_the_one_is_no_address);
    tcase_add_test(tcase, a_ticket_leads_to_the_page_and_to_nothing_else);
    tcase_add_test(tcase, no_path_but_the_few_means_anything);
    tcase_add_test(tcase, another_method_is_told_which_there_are);
    tcase_add_test(tcase, a_name_that_was_made_to_point_here_is_turned_away);
    tcase_add_test(tcase, the_page_of_another_site_is_turned_away);
    suite_add_tcase(suite, tcase);
    tcase = tcase_create("crowd");
    tcase_add_test(tcase, a_full_house_takes_nobody_more);
    tcase_add_test(tcase, the_longest_stranger_yields_to_a_newcomer);
    tcase_add_test(tcase, who_has_shown_the_token_yields_to_nobody);
    tcase_add_test(tcase, a_stranger_has_five_seconds);
    tcase_add_test(tcase, a_text_that_has_begun_to_arrive_must_be_whole_in_time);
    suite_add_tcase(suite, tcase);
    tcase = tcase_create("rate");
    tcase_add_test(tcase, so_many_at_once_and_then_so_many_a_second);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
