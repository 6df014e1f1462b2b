/* SPDX-License-Identifier: MIT */
/* asked: see asked.h. Which pictures of a play are asked about, and which of their lines. */
#include "page/sheet/asked.h"

#include "base/rng.h"
#include "page/sheet/asking.h"

#include <string.h>

#define SAME_PLACE 1.0 /* m (ours) */

enum { LINES_MOST = 4, BLANKS_MOST = 3 }; /* of one question; of one picture (ours) */

/* One question that a picture can be asked. */
struct topic_at {
    enum topic topic;
    size_t task;
    const bool *missing; /* with its line */
    size_t lines;
    bool fits;    /* few lines, and some stay */
    bool pointed; /* the coach has a word for who does it */
};
typedef VEC(struct topic_at) topic_list;

/* A diagram with all that can be asked about it. */
struct picture {
    struct looking looking;
    topic_list topics;
    bool chosen;
    bool *missing; /* what is asked for already */
    blank_list blanks;
    int questions;
};
struct asking {
    struct arena *arena;
    uint64_t seed;
    struct rng rng; /* which pictures */
    struct picture *pictures;
    size_t count;
};

/* ---- topics ---- */

static bool has_screened(const struct looking *looking, size_t before, body who)
{
    for (size_t i = 0; i < before; i++) {
        if (task_of(looking, i)->who == who && task_of(looking, i)->kind == TASK_SCREEN) {
            return true;
        }
    }
    return false;
}

static enum topic topic_of(const struct looking *looking, size_t index)
{
    const struct task *task = task_of(looking, index);
    bool runs = task->kind == TASK_MOVE || task->kind == TASK_CARRY;
    bool rest =
        looking->branch && looking->branch->kind == BRANCH_READ && !looking_is_read(looking);
    if (runs && !rest && has_screened(looking, index, task->who)) { /* of what is left over, no sign
                                                                       tells a roll from a pop */
        return TOPIC_SCREENER;
    }
    switch (task->kind) {
    case TASK_USE:
        return TOPIC_USE;
    case TASK_SCREEN:
        return TOPIC_SCREEN;
    case TASK_PASS:
    case TASK_EXCHANGE:
        return TOPIC_PASS;
    case TASK_MOVE:
    case TASK_CARRY:
        return TOPIC_PLACE;
    default:
        return TOPIC_COUNT;
    }
}

/* A sentence that is drawn, of the diagram's own. */
static bool can_be_asked(const struct looking *looking, size_t index)
{
    const struct task *task = task_of(looking, index);
    return task_is_drawn(looking, index) && task->order > 0 && !task->stay;
}

/* Who answers a read: who gets the ball last, of those who run for it; BODY_NONE: nobody does. */
static body answerer_of(const struct looking *looking)
{
    body answerer = BODY_NONE;
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *pass = task_of(looking, i);
        for (size_t k = looking->first; k < i && can_be_asked(looking, i) && task_gives(pass);
             k++) {
            const struct task *run = task_of(looking, k);
            bool his = can_be_asked(looking, k) && run->who == pass->other && !task_gives(run);
            answerer = his ? run->who : answerer;
        }
    }
    return answerer;
}

static bool points_at(const point_list *points, body who)
{
    for (size_t i = 0; i < points->count; i++) {
        if (points->at[i].player > 0 && body_attacker(points->at[i].player) == who) {
            return true;
        }
    }
    return false;
}

/* Is the ball for one whose own line in the picture, which stays, ends where it goes? */
static bool is_seen_coming(const struct looking *looking, size_t pass, const bool *missing)
{
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (!missing[i] && task->who == task_of(looking, pass)->other && task_is_way(task) &&
            task->kind != TASK_SCREEN && task_is_drawn(looking, i)) {
            return true;
        }
    }
    return false;
}

static void add_topic(struct picture *picture, enum topic topic, size_t index)
{
    const struct looking *looking = &picture->looking;
    body who = task_of(looking, index)->who;
    bool read = topic == TOPIC_READ;
    struct topic_at at = {.topic = topic, .task = index};
    at.missing = missing_with(looking, index);
    at.lines = missing_lines(looking, at.missing);
    at.fits = at.lines <= LINES_MOST && (read || drawn_lines(looking, at.missing) > 0) &&
              (topic != TOPIC_PASS || !is_seen_coming(looking, index, at.missing));
    at.pointed =
        points_at(looking->branch ? &looking->branch->points : &looking->step->points, who);
    VEC_PUSH(looking->arena, &picture->topics, at);
}

static void find_topics(struct picture *picture)
{
    const struct looking *looking = &picture->looking;
    bool read = looking_is_read(looking);
    body answerer = read ? answerer_of(looking) : BODY_NONE;
    for (size_t i = looking->first; i < looking->end; i++) {
        if (!can_be_asked(looking, i)) {
            continue;
        }
        enum topic topic = topic_of(looking, i);
        bool his = answerer == BODY_NONE || task_of(looking, i)->who == answerer;
        if (read && his && topic != TOPIC_COUNT && topic != TOPIC_PASS) {
            topic = TOPIC_READ;
            read = false;
        }
        if (topic != TOPIC_COUNT) {
            add_topic(picture, topic, i);
        }
    }
}

/* ---- which of them ---- */

/* How telling one is, the lower the more: of where to stop the coach's word counts first. What does
 * not fit is asked when there is nothing else, of that what takes the fewest lines away. */
static size_t topic_rank(const struct topic_at *at)
{
    if (!at->fits) {
        return 2 * TOPIC_COUNT + at->lines;
    }
    bool raised = at->pointed && at->topic == TOPIC_PLACE;
    return (size_t)(raised ? TOPIC_PASS : at->topic) * 2 + !at->pointed;
}

/* The most telling of these that takes other lines away than those in `before`; NULL: there is
 * none, or none that fits. */
static const struct topic_at *next_topic(const struct looking *looking, const topic_list *topics,
                                         const struct topic_at *const *before, size_t count)
{
    const struct topic_at *best = NULL;
    for (size_t i = 0; i < topics->count; i++) {
        const struct topic_at *at = &topics->at[i];
        bool known = count > 0 && !at->fits;
        for (size_t k = 0; k < count; k++) {
            known =
                known || memcmp(at->missing, before[k]->missing, looking->end * sizeof(bool)) == 0;
        }
        best = !known && (!best || topic_rank(at) < topic_rank(best)) ? at : best;
    }
    return best;
}

/* Is it about the point of its picture: of a read what is done for it, by the one who answers or
 * the one who screened, or what the coach has a word for? */
static bool is_to_the_point(const struct looking *looking, const struct topic_at *at)
{
    bool read = looking->branch && looking->branch->kind == BRANCH_READ;
    return !read || at->topic <= TOPIC_USE || at->pointed;
}

/* Each seed asks another of the few most telling, where there are several; the first the best. */
static const struct topic_at *pick_topic(const struct looking *looking, const topic_list *topics,
                                         uint64_t turn)
{
    enum { MOST = 3 }; /* (ours) */
    const struct topic_at *few[MOST];
    size_t count = 0;
    while (count < MOST) {
        const struct topic_at *next = next_topic(looking, topics, few, count);
        if (!next || (count > 0 && !is_to_the_point(looking, next))) {
            break;
        }
        few[count++] = next;
    }
    return count > 0 ? few[turn % count] : NULL;
}

static bool has_blank(const struct picture *picture, body who)
{
    for (size_t i = 0; i < picture->blanks.count; i++) {
        if (picture->blanks.at[i].who == who) {
            return true;
        }
    }
    return false;
}

/* Can it be asked besides? It touches nothing that is missing, a player has one blank, and a line
 * stays. */
static bool goes_beside(const struct asking *asking, const struct picture *picture,
                        const struct topic_at *at, const blank_list *blanks)
{
    const struct looking *looking = &picture->looking;
    if (!at->fits || picture->blanks.count + blanks->count > BLANKS_MOST) {
        return false;
    }
    for (size_t i = 0; i < blanks->count; i++) {
        if (has_blank(picture, blanks->at[i].who)) {
            return false;
        }
    }
    bool *both = arena_array(asking->arena, bool, looking->diagram->segment->tasks + 1);
    for (size_t i = 0; i < looking->end; i++) {
        if (at->missing[i] && picture->missing[i]) {
            return false;
        }
        both[i] = at->missing[i] || picture->missing[i];
    }
    return drawn_lines(looking, both) > 0;
}

static void ask_topic(struct picture *picture, const struct topic_at *at)
{
    const struct looking *looking = &picture->looking;
    for (size_t i = 0; i < looking->end; i++) {
        picture->missing[i] = picture->missing[i] || at->missing[i];
    }
    blanks_of(looking, at->topic, at->task, at->missing, &picture->blanks);
    picture->questions++;
}

/* Asks one more question about a picture; false: there is none. */
static bool ask(struct asking *asking, struct picture *picture)
{
    const struct looking *looking = &picture->looking;
    topic_list left = {0};
    for (size_t i = 0; i < picture->topics.count; i++) {
        const struct topic_at *at = &picture->topics.at[i];
        blank_list blanks = {0};
        blanks_of(looking, at->topic, at->task, at->missing, &blanks);
        if (picture->questions == 0 || goes_beside(asking, picture, at, &blanks)) {
            VEC_PUSH(asking->arena, &left, *at);
        }
    }
    size_t index = (size_t)(picture - asking->pictures);
    uint64_t turn = asking->seed > 0 ? asking->seed + index : 0;
    const struct topic_at *at = pick_topic(looking, &left, turn);
    if (at) {
        ask_topic(picture, at);
    }
    return at != NULL;
}

/* ---- which pictures ---- */

/* How much a picture is worth asking about: by its best topic. */
static size_t worth(const struct picture *picture)
{
    size_t best = SIZE_MAX;
    for (size_t i = 0; i < picture->topics.count; i++) {
        size_t rank = topic_rank(&picture->topics.at[i]) / 2;
        best = rank < best ? rank : best;
    }
    return best;
}

/* What a step has in common is not asked for beside its reads: their pictures begin with it. */
static bool is_told_by_reads(const struct asking *asking, const struct picture *picture)
{
    if (picture->looking.branch) {
        return false;
    }
    for (size_t i = 0; i < asking->count; i++) {
        const struct picture *way = &asking->pictures[i];
        if (way->looking.step == picture->looking.step && way->looking.branch &&
            way->looking.branch->kind == BRANCH_READ && way->topics.count > 0) {
            return true;
        }
    }
    return false;
}

static bool is_free(const struct asking *asking, const struct picture *picture, int step)
{
    return !picture->chosen && picture->topics.count > 0 &&
           (step < 0 || picture->looking.diagram->step == step) &&
           !is_told_by_reads(asking, picture);
}

/* Chooses, of the pictures of this step (-1: of any), one with the best to ask about. */
static bool choose(struct asking *asking, int step)
{
    size_t best = SIZE_MAX;
    uint32_t count = 0;
    for (size_t i = 0; i < asking->count; i++) {
        size_t own = worth(&asking->pictures[i]);
        if (is_free(asking, &asking->pictures[i], step) && own <= best) {
            count = own == best ? count + 1 : 1;
            best = own;
        }
    }
    if (count == 0) {
        return false;
    }
    uint32_t place = rng_below(&asking->rng, count);
    for (size_t i = 0; i < asking->count; i++) {
        struct picture *picture = &asking->pictures[i];
        if (is_free(asking, picture, step) && worth(picture) == best && place-- == 0) {
            picture->chosen = true;
        }
    }
    return true;
}

/* ---- what one picture tells of another ---- */

/* What is looked at of a picture to see what it tells. */
struct view {
    const struct segment *segment;
    const struct scene *scene; /* whole */
    const bool *missing;
};

static bool is_line_of(const struct view *view, size_t task)
{
    for (size_t i = 0; i < view->scene->items.count; i++) {
        const struct scene_item *item = &view->scene->items.at[i];
        if (item->task == (int)task && item->line >= 0 && !item->casing) {
            return true;
        }
    }
    return false;
}

/* Do these two lines, of two pictures, tell the same: the same player to the same place, the ball
 * from the same one to the same? That somebody goes to screen tells nothing of a slip. */
static bool tells_same(const struct view *a, size_t asked, const struct view *b, size_t drawn)
{
    const struct task *one = segment_task(a->segment, asked);
    const struct task *other = segment_task(b->segment, drawn);
    bool pass = task_gives(one) && task_gives(other) && one->other == other->other;
    bool slipped = one->kind == TASK_SCREEN && a->segment->record[asked].time[MOMENT_SET] < 0;
    bool way = task_is_way(one) && task_is_way(other) && !slipped;
    return one->who == other->who && (pass || way) &&
           vec2_distance(a->segment->record[asked].to, b->segment->record[drawn].to) < SAME_PLACE;
}

/* The first task whose line `b` shows that tells what `a` asks for; b's count: there is none. */
static size_t telling_task(const struct view *a, const struct view *b)
{
    for (size_t k = 0; k < b->segment->tasks; k++) {
        bool drawn = !b->missing[k] && is_line_of(b, k);
        for (size_t i = 0; i < a->segment->tasks && drawn; i++) {
            if (a->missing[i] && is_line_of(a, i) && tells_same(a, i, b, k)) {
                return k;
            }
        }
    }
    return b->segment->tasks;
}

static struct view view_of(const struct picture *picture)
{
    return (struct view){picture->looking.diagram->segment, picture->looking.scene,
                         picture->missing};
}

/* Asks for this line, too; false: it cannot be asked beside what is. */
static bool ask_for(const struct asking *asking, struct picture *picture, size_t task)
{
    for (size_t i = 0; i < picture->topics.count; i++) {
        const struct topic_at *at = &picture->topics.at[i];
        blank_list blanks = {0};
        blanks_of(&picture->looking, at->topic, at->task, at->missing, &blanks);
        if (at->missing[task] && goes_beside(asking, picture, at, &blanks)) {
            ask_topic(picture, at);
            return true;
        }
    }
    return false;
}

/* A way on that would tell what its sister asks for is asked for the same, where that can be. */
static void ask_what_tells(struct asking *asking)
{
    for (size_t i = 0; i < asking->count; i++) {
        for (size_t k = 0; k < asking->count; k++) {
            struct picture *one = &asking->pictures[i], *other = &asking->pictures[k];
            bool sisters =
                i != k && one->chosen && other->chosen && one->looking.step == other->looking.step;
            for (bool more = sisters; more;) {
                struct view a = view_of(one), b = view_of(other);
                size_t task = telling_task(&a, &b);
                more = task < b.segment->tasks && ask_for(asking, other, task);
            }
        }
    }
}

/* ---- the list ---- */

static bool is_before(const struct looking *looking, const struct blank *a, const struct blank *b)
{
    double first = task_began(looking, a->first), second = task_began(looking, b->first);
    return first < second || (first == second && a->first < b->first);
}

/* Letters in the order in which the lines begin. */
static void letter_blanks(struct picture *picture)
{
    blank_list *blanks = &picture->blanks;
    for (size_t i = 1; i < blanks->count; i++) {
        for (size_t k = i;
             k > 0 && is_before(&picture->looking, &blanks->at[k], &blanks->at[k - 1]); k--) {
            struct blank later = blanks->at[k - 1];
            blanks->at[k - 1] = blanks->at[k];
            blanks->at[k] = later;
        }
    }
    for (size_t i = 0; i < blanks->count; i++) {
        blanks->at[i].letter = (char)('A' + i);
    }
}

static void list_picture(struct asking *asking, struct picture *picture, asked_list *out)
{
    const struct looking *looking = &picture->looking;
    letter_blanks(picture);
    struct asked asked = {.diagram = looking->diagram,
                          .scene = looking->scene,
                          .title = asked_title(looking),
                          .missing = picture->missing,
                          .lines = missing_lines(looking, picture->missing),
                          .blanks = picture->blanks};
    VEC_PUSH(asking->arena, out, asked);
}

static struct asking look_through(struct arena *arena, const struct play *play,
                                  const diagram_list *diagrams, double width)
{
    struct asking asking = {.arena = arena,
                            .pictures = arena_array(arena, struct picture, diagrams->count + 1),
                            .count = diagrams->count};
    for (size_t i = 0; i < diagrams->count; i++) {
        struct picture *picture = &asking.pictures[i];
        picture->looking = looking_at(arena, play, &diagrams->at[i], width);
        picture->missing = arena_array(arena, bool, diagrams->at[i].segment->tasks + 1);
        find_topics(picture);
    }
    return asking;
}

void asked_of(struct arena *arena, const struct play *play, const diagram_list *diagrams,
              uint64_t seed, size_t least, double width, asked_list *out)
{
    struct asking asking = look_through(arena, play, diagrams, width);
    asking.seed = seed;
    rng_seed(&asking.rng, seed ^ hash_bytes(HASH_SEED, play->name.at, play->name.size));
    size_t asked = 0;
    for (size_t step = 0; step < play->steps.count; step++) {
        asked += choose(&asking, (int)step);
    }
    while (asked < least && choose(&asking, -1)) {
        asked++;
    }
    for (size_t i = 0; i < asking.count; i++) {
        if (asking.pictures[i].chosen) {
            ask(&asking, &asking.pictures[i]);
        }
    }
    bool more = true;
    while (more && asked < least) { /* a short play is asked more about */
        more = false;
        for (size_t i = 0; i < asking.count && asked < least; i++) {
            bool another = asking.pictures[i].chosen && ask(&asking, &asking.pictures[i]);
            asked += another;
            more = more || another;
        }
    }
    ask_what_tells(&asking);
    for (size_t i = 0; i < asking.count; i++) {
        if (asking.pictures[i].chosen) {
            list_picture(&asking, &asking.pictures[i], out);
        }
    }
}

/* ---- which may be seen together ---- */

/* Is somebody where this one's lines would bring him as the other begins, which goes on from
 * another way through the same step, and has he not been there before? */
static bool ends_as_begins(const struct asked *asked, const struct asked *other)
{
    const struct segment *segment = asked->diagram->segment, *seen = other->diagram->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        struct vec2 end = segment->record[i].to;
        bool comes = vec2_distance(end, segment_at(segment, task->who, 0)) > SAME_PLACE;
        if (asked->missing[i] && task_is_way(task) && comes &&
            vec2_distance(end, segment_at(seen, task->who, 0)) < SAME_PLACE) {
            return true;
        }
    }
    return false;
}

/* Does the other's picture, one further on, begin where this one's lines end? */
static bool is_told_by(const struct asked *asked, const struct asked *other)
{
    const struct diagram *diagram = asked->diagram, *seen = other->diagram;
    if (seen->step == diagram->step) {
        return diagram->branch < 0 && seen->branch >= 0;
    }
    const struct segment *way = seen->segment->before;
    while (way && way->step != diagram->step) {
        way = way->before;
    }
    return way &&
           (diagram->branch < 0 || way->branch == diagram->branch || ends_as_begins(asked, other));
}

/* Does the other's picture draw what this one asks for? */
static bool is_drawn_in(const struct asked *asked, const struct asked *other)
{
    struct view a = {asked->diagram->segment, asked->scene, asked->missing};
    struct view b = {other->diagram->segment, other->scene, other->missing};
    return telling_task(&a, &b) < b.segment->tasks;
}

size_t asked_together(const asked_list *asked, size_t from)
{
    for (size_t next = from + 1; next < asked->count; next++) {
        for (size_t i = from; i < next; i++) {
            const struct asked *one = &asked->at[i], *other = &asked->at[next];
            if (is_told_by(one, other) || is_drawn_in(one, other) || is_drawn_in(other, one)) {
                return next - from;
            }
        }
    }
    return asked->count - from;
}
