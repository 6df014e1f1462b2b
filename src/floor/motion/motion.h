/* SPDX-License-Identifier: MIT */
/* motion: how a body moves: speed laws, braking, turning, paths by shape. No clock. */
#ifndef FLOOR_MOTION_MOTION_H
#define FLOOR_MOTION_MOTION_H

#include "base/geom/path.h"
#include "floor/court/court.h"
#include "floor/play/play.h"

#define MOTION_BODY .25     /* radius of a body between shoulder and chest, m (ours) */

/* Sprint law v = V - (V - v0) e^(-t/tau) and its distance (Furusawa, Hill & Parkinson 1927). */
double motion_speed(double top, double tau, double v0, double t);
double motion_distance(double top, double tau, double v0, double t);
double motion_time(double top, double tau, double v0, double distance); /* inverse, by bisection */
/* Run from rest and brake to a stop in exactly `distance`. */
double motion_rush(double top, double tau, double brake, double distance);
/* Speed that can be carried through a turn of `angle` radians, as a share of top speed. */
double motion_turn_share(double angle);
double motion_effort(const struct level *level, enum verb_pace effort, double *cap); /* target speed; cap: clip, or 0 */

#endif
