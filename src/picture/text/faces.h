/* SPDX-License-Identifier: MIT */
/* faces: the bytes of the face's files, put into the program by fonts/faces.S.in. Private to text.
 */
#ifndef PICTURE_TEXT_FACES_H
#define PICTURE_TEXT_FACES_H

extern const unsigned char face_regular[], face_regular_end[];
extern const unsigned char face_medium[], face_medium_end[];
extern const unsigned char face_semibold[], face_semibold_end[];
extern const unsigned char face_bold[], face_bold_end[];
extern const unsigned char face_extrabold[], face_extrabold_end[];

#endif
