/* SPDX-License-Identifier: MIT */
/* Hulls, distances, crossings and cells against GEOS (Debian's libgeos-c1v5, the geometry engine of
 * maps), on seeded random cases on and round a floor: a thousand of each. A test asks both and
 * never knows an answer of its own. */
#include "base/geom/path.h"
#include "base/geom/shape.h"
#include "base/rng.h"
#include "suite.h"

#include <geos_c.h>
#include <math.h>
#include <stdarg.h>

#define CLOSE(got, wanted, within) ck_assert_double_eq_tol((got), (wanted), (within))
#define EXACT 1e-9 /* m, m^2: what doubles leave of numbers up to 30 */
enum { CASES = 1000, MOST = 12 };

static GEOSContextHandle_t geos;
static struct rng rng;

static void open_geos(void)
{
    open_arena();
    geos = GEOS_init_r();
    rng_seed(&rng, 20261125);
}

static void close_geos(void)
{
    GEOS_finish_r(geos);
    close_arena();
}

/* On a floor; every third one to the half metre, where points fall together and lie in line. */
static struct vec2 some_point(int number)
{
    struct vec2 p = {15 * rng_unit(&rng) - 7.5, 14 * rng_unit(&rng) - 1.575};
    if (number % 3 == 0) {
        p = vec2_of(floor(2 * p.x) / 2, floor(2 * p.y) / 2);
    }
    return p;
}

static GEOSCoordSequence *sequence_of(const struct vec2 *points, size_t count, bool closed)
{
    GEOSCoordSequence *sequence =
        GEOSCoordSeq_create_r(geos, (unsigned)(count + (closed ? 1 : 0)), 2);
    for (size_t i = 0; i < count + (closed ? 1 : 0); i++) {
        struct vec2 p = points[i % count];
        GEOSCoordSeq_setXY_r(geos, sequence, (unsigned)i, p.x, p.y);
    }
    return sequence;
}

static GEOSGeometry *point_of(struct vec2 p)
{
    return GEOSGeom_createPointFromXY_r(geos, p.x, p.y);
}

static GEOSGeometry *line_of(const struct vec2 *points, size_t count)
{
    return GEOSGeom_createLineString_r(geos, sequence_of(points, count, false));
}

static GEOSGeometry *polygon_of(const struct vec2 *points, size_t count)
{
    GEOSGeometry *ring = GEOSGeom_createLinearRing_r(geos, sequence_of(points, count, true));
    return GEOSGeom_createPolygon_r(geos, ring, NULL, 0);
}

static GEOSGeometry *points_of(const struct vec2 *points, size_t count)
{
    GEOSGeometry *each[MOST];
    for (size_t i = 0; i < count; i++) {
        each[i] = point_of(points[i]);
    }
    return GEOSGeom_createCollection_r(geos, GEOS_MULTIPOINT, each, (unsigned)count);
}

static void drop(GEOSGeometry *first, ...)
{
    va_list others;
    va_start(others, first);
    for (GEOSGeometry *one = first; one; one = va_arg(others, GEOSGeometry *)) {
        GEOSGeom_destroy_r(geos, one);
    }
    va_end(others);
}

static double area_in(const GEOSGeometry *geometry)
{
    double area = -1;
    ck_assert_int_eq(GEOSArea_r(geos, geometry, &area), 1);
    return area;
}

static double distance_in(const GEOSGeometry *a, const GEOSGeometry *b)
{
    double distance = -1;
    ck_assert_int_eq(GEOSDistance_r(geos, a, b, &distance), 1);
    return distance;
}

START_TEST(hulls_have_the_area_that_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST], hull[MOST];
        size_t count = 1 + rng_below(&rng, MOST);
        for (size_t k = 0; k < count; k++) {
            points[k] = some_point(i);
        }
        size_t corners = hull_of(&arena, points, count, hull);
        GEOSGeometry *all = points_of(points, count), *wanted = GEOSConvexHull_r(geos, all);
        CLOSE(polygon_area(hull, corners), area_in(wanted), EXACT);
        for (size_t k = 0; k < corners; k++) { /* and none of its corners is off it */
            GEOSGeometry *corner = point_of(hull[k]);
            CLOSE(distance_in(corner, wanted), 0, EXACT);
            drop(corner, NULL);
        }
        drop(all, wanted, NULL);
    }
}
END_TEST

START_TEST(hulls_have_as_many_corners_as_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST], hull[MOST];
        size_t count = 3 + rng_below(&rng, MOST - 2);
        for (size_t k = 0; k < count; k++) {
            points[k] = some_point(i);
        }
        size_t corners = hull_of(&arena, points, count, hull);
        GEOSGeometry *all = points_of(points, count), *wanted = GEOSConvexHull_r(geos, all);
        int there = GEOSGetNumCoordinates_r(geos, wanted);
        bool ring = GEOSGeomTypeId_r(geos, wanted) == GEOS_POLYGON; /* says its first twice */
        ck_assert_int_eq((int)corners, there - ring);
        drop(all, wanted, NULL);
    }
}
END_TEST

START_TEST(a_point_is_as_far_from_a_line_as_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 p = some_point(i), ends[2] = {some_point(i), some_point(i)};
        GEOSGeometry *point = point_of(p), *line = line_of(ends, 2);
        CLOSE(segment_distance(p, ends[0], ends[1], NULL), distance_in(point, line), EXACT);
        drop(point, line, NULL);
    }
}
END_TEST

START_TEST(two_lines_are_as_far_apart_as_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 a[2] = {some_point(i), some_point(i)}, b[2] = {some_point(i), some_point(i)};
        GEOSGeometry *one = line_of(a, 2), *other = line_of(b, 2);
        CLOSE(segment_gap(a[0], a[1], b[0], b[1]), distance_in(one, other), EXACT);
        drop(one, other, NULL);
    }
}
END_TEST

/* Where two lines cross, GEOS crosses them too and at that place; no case may hang on it. */
START_TEST(lines_cross_where_geos_has_them_cross)
{
    int crossed = 0;
    for (int i = 0; i < CASES; i++) {
        struct vec2 a[2] = {some_point(1), some_point(1)}, b[2] = {some_point(1), some_point(1)};
        GEOSGeometry *one = line_of(a, 2), *other = line_of(b, 2);
        double t, u;
        bool cross = segment_cross(a[0], a[1], b[0], b[1], &t, &u);
        ck_assert_int_eq(cross, GEOSIntersects_r(geos, one, other));
        if (cross) {
            GEOSGeometry *meet = GEOSIntersection_r(geos, one, other);
            struct vec2 at;
            GEOSGeomGetX_r(geos, meet, &at.x);
            GEOSGeomGetY_r(geos, meet, &at.y);
            CLOSE(vec2_distance(at, vec2_mix(a[0], a[1], t)), 0, 1e-6);
            CLOSE(vec2_distance(at, vec2_mix(b[0], b[1], u)), 0, 1e-6);
            drop(meet, NULL);
            crossed++;
        }
        drop(one, other, NULL);
    }
    ck_assert_int_gt(crossed, CASES / 10);
}
END_TEST

static struct path some_path(int number, struct vec2 points[MOST], size_t *count)
{
    *count = 2 + rng_below(&rng, MOST - 1);
    for (size_t k = 0; k < *count; k++) {
        points[k] = some_point(number);
    }
    return path_of(&arena, points, *count);
}

START_TEST(paths_are_as_long_as_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST];
        size_t count;
        struct path path = some_path(i, points, &count);
        GEOSGeometry *line = line_of(points, count);
        double length = -1;
        ck_assert_int_eq(GEOSLength_r(geos, line, &length), 1);
        CLOSE(path_length(&path), length, EXACT);
        drop(line, NULL);
    }
}
END_TEST

START_TEST(a_length_along_a_path_lies_where_geos_has_it)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST], at = {0, 0};
        size_t count;
        struct path path = some_path(i, points, &count);
        double along = path_length(&path) * rng_unit(&rng);
        GEOSGeometry *line = line_of(points, count), *wanted = GEOSInterpolate_r(geos, line, along);
        GEOSGeomGetX_r(geos, wanted, &at.x);
        GEOSGeomGetY_r(geos, wanted, &at.y);
        CLOSE(vec2_distance(path_point(&path, along), at), 0, 1e-6);
        drop(line, wanted, NULL);
    }
}
END_TEST

/* The nearest point, not the place along: two places of a path may be as near. */
START_TEST(the_nearest_point_of_a_path_is_as_near_as_geos_finds)
{
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST], p = some_point(i);
        size_t count;
        struct path path = some_path(i, points, &count);
        GEOSGeometry *line = line_of(points, count), *point = point_of(p);
        double far = vec2_distance(p, path_point(&path, path_nearest(&path, p, 0)));
        CLOSE(far, distance_in(point, line), 1e-6);
        drop(line, point, NULL);
    }
}
END_TEST

static const struct vec2 floor_corners[4] = {
    {-7.5, -1.575}, {7.5, -1.575}, {7.5, 12.425}, {-7.5, 12.425}};

/* The part of a FIBA half court that is nearer to him than to any other. */
static double cell_area(const struct vec2 *players, size_t count, size_t self)
{
    struct vec2 cell[4 + MOST], cut[4 + MOST];
    size_t corners = 4;
    for (size_t i = 0; i < 4; i++) {
        cell[i] = floor_corners[i];
    }
    for (size_t other = 0; other < count; other++) {
        if (other != self) {
            struct vec2 middle = vec2_mix(players[self], players[other], .5);
            corners =
                polygon_cut(cell, corners, middle, vec2_sub(players[other], players[self]), cut);
            for (size_t i = 0; i < corners; i++) {
                cell[i] = cut[i];
            }
        }
    }
    return polygon_area(cell, corners);
}

/* Voronoi cells worked by hand, on 15 x 14 m: two players
 * 112 and 98, and 88.125 and 121.875 m^2; five 27.1023 twice, 50.7024 twice, 54.3906. */
START_TEST(cells_have_their_worked_areas)
{
    struct vec2 across[2] = {{5, 7}, {11, 7}}, slant[2] = {{3, 3}, {9, 11}},
                five[5] = {{1, 1.5}, {14, 1.5}, {3, 7}, {12, 7}, {7.5, 9}};
    struct vec2 corner = {7.5,
                          1.575}; /* from a floor counted from its corner to one from the ring */
    for (int i = 0; i < 2; i++) {
        across[i] = vec2_sub(across[i], corner);
        slant[i] = vec2_sub(slant[i], corner);
    }
    for (int i = 0; i < 5; i++) {
        five[i] = vec2_sub(five[i], corner);
    }
    static const double wanted[] = {27.1023, 27.1023, 50.7024, 50.7024, 54.3906};
    CLOSE(cell_area(across, 2, 0), 112, EXACT);
    CLOSE(cell_area(across, 2, 1), 98, EXACT);
    CLOSE(cell_area(slant, 2, 0), 88.125, EXACT);
    CLOSE(cell_area(slant, 2, 1), 121.875, EXACT);
    for (size_t i = 0; i < 5; i++) {
        CLOSE(cell_area(five, 5, i), wanted[i], 1e-4);
    }
}
END_TEST

/* The cells of five players, cut out of the floor, against GEOS's Voronoi diagram cut by it. */
START_TEST(cells_have_the_area_that_geos_finds)
{
    GEOSGeometry *ground = polygon_of(floor_corners, 4);
    for (int i = 0; i < CASES; i++) {
        struct vec2 players[5];
        for (size_t k = 0; k < 5; k++) {
            players[k] = some_point(1);
        }
        GEOSGeometry *all = points_of(players, 5),
                     *cells = GEOSVoronoiDiagram_r(geos, all, ground, 0, 0);
        ck_assert_ptr_nonnull(cells);
        int found = 0;
        for (int c = 0; c < GEOSGetNumGeometries_r(geos, cells); c++) {
            const GEOSGeometry *cell = GEOSGetGeometryN_r(geos, cells, c);
            GEOSGeometry *inside = GEOSIntersection_r(geos, cell, ground);
            for (size_t k = 0; k < 5; k++) {
                GEOSGeometry *player = point_of(players[k]);
                if (GEOSContains_r(geos, cell, player) == 1) {
                    CLOSE(cell_area(players, 5, k), area_in(inside), 1e-6);
                    found++;
                }
                drop(player, NULL);
            }
            drop(inside, NULL);
        }
        ck_assert_int_eq(found, 5);
        drop(all, cells, NULL);
    }
    drop(ground, NULL);
}
END_TEST

/* A convex polygon cut by a line against GEOS's intersection with half of a large square. */
START_TEST(cut_polygons_have_the_area_that_geos_finds)
{
    int left = 0;
    for (int i = 0; i < CASES; i++) {
        struct vec2 points[MOST], hull[MOST], cut[MOST + 1];
        for (size_t k = 0; k < MOST; k++) {
            points[k] = some_point(1);
        }
        size_t corners = hull_of(&arena, points, MOST, hull);
        struct vec2 at = some_point(1), out = vec2_unit(vec2_sub(some_point(1), at)),
                    way = vec2_left(out);
        size_t kept = polygon_cut(hull, corners, at, out, cut);
        struct vec2 half[4] = {vec2_along(at, way, 99), vec2_along(at, way, -99)};
        half[2] = vec2_along(half[1], out, -99);
        half[3] = vec2_along(half[0], out, -99);
        GEOSGeometry *whole = polygon_of(hull, corners), *side = polygon_of(half, 4),
                     *wanted = GEOSIntersection_r(geos, whole, side);
        CLOSE(polygon_area(cut, kept), area_in(wanted), 1e-6);
        left += kept > 2;
        drop(whole, side, wanted, NULL);
    }
    ck_assert_int_gt(left, CASES / 2);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("geometry against GEOS");
    TCase *all = tcase_create("a thousand cases each");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_geos, close_geos);
    tcase_add_test(all, hulls_have_the_area_that_geos_finds);
    tcase_add_test(all, hulls_have_as_many_corners_as_geos_finds);
    tcase_add_test(all, a_point_is_as_far_from_a_line_as_geos_finds);
    tcase_add_test(all, two_lines_are_as_far_apart_as_geos_finds);
    tcase_add_test(all, lines_cross_where_geos_has_them_cross);
    tcase_add_test(all, paths_are_as_long_as_geos_finds);
    tcase_add_test(all, a_length_along_a_path_lies_where_geos_has_it);
    tcase_add_test(all, the_nearest_point_of_a_path_is_as_near_as_geos_finds);
    tcase_add_test(all, cells_have_their_worked_areas);
    tcase_add_test(all, cells_have_the_area_that_geos_finds);
    tcase_add_test(all, cut_polygons_have_the_area_that_geos_finds);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
