/* SPDX-License-Identifier: MIT */
/* card: the bench card. Takes plays that were run, gives a PDF: a small card for each way through
 * each step, grouped by what the play is for, to be cut apart. */
#include "page/sheet/sheets.h"

#include "page/sheet/card_cell.h"
#include "page/sheet/rows.h"

#define CARDS_TOP 64.0 /* there is no title */
#define TO_NOTE 11.0   /* from the last cut to the line under it */
#define ROOM_BELOW 7.0 /* from the last cut to the key at least */
#define NOTE_TO_KEY 12.0

#define TO_CARDS 12.0 /* from what stands over them on the first page */

enum { ACROSS_MOST = 4, DOWN_MOST = 8 };
enum { FULL_ROWS = 2 }; /* of a full floor */

/* A play with what it is for. */
struct carded {
    const struct sheet_play *row;
    struct situation situation;
    size_t group; /* of those with this word; the order of groups */
};
/* A page of cards being filled: which card covers each place, from 1; 0: none. */
struct board {
    const struct card_size *size;
    double top;
    size_t rows;
    size_t cards, last; /* how many, and which place, row by row, the last of them begins in */
    bool wide;          /* one of them is two columns wide */
    size_t at[DOWN_MOST][ACROSS_MOST];
};
struct card_flow {
    struct rows rows;     /* lives as long as the booklet's pages */
    struct setter setter; /* for what one play needs */
    const struct card_size *size;
    struct board board;        /* of the last page */
    VEC(struct str) shortened; /* names, in full */
    bool turned;               /* a card too tall for what is left of the page goes to the next */
};

/* ---- which cards ---- */

/* The same word has the same group; ours in our order, then the coach's own as they come. */
static struct carded *group_plays(const struct setter *setter)
{
    const struct sheet_job *job = setter->job;
    struct carded *plays = arena_array(setter->arena, struct carded, job->count);
    size_t groups = situation_count();
    for (size_t i = 0; i < job->count; i++) {
        struct carded *play = &plays[i];
        play->row = &job->plays[i];
        play->situation = situation_of(setter->arena, play->row->play);
        play->group = play->situation.order;
        for (size_t k = 0; k < i && play->group == situation_count(); k++) {
            if (str_equal_fold(plays[k].situation.word, play->situation.word)) {
                play->group = plays[k].group;
            }
        }
        if (play->group == situation_count()) {
            play->group = ++groups;
        }
    }
    return plays;
}

static size_t next_group(const struct carded *plays, size_t count, size_t after)
{
    size_t next = SIZE_MAX;
    for (size_t i = 0; i < count; i++) {
        next = plays[i].group >= after && plays[i].group < next ? plays[i].group : next;
    }
    return next;
}

/* ---- pages ---- */

static double left_of(const struct card_flow *flow)
{
    return paper_of(flow->rows.setter.job->a4)->margin;
}

static size_t rows_below(const struct card_flow *flow, const struct page *page, double top)
{
    double room = page->key - ROOM_BELOW - top;
    return room < 0 ? 0 : (size_t)(room / flow->size->height + 1e-6);
}

/* Lays the board on a page, under what stands there already; where that leaves room for less than a
 * full floor, on a new one. */
static void open_board(struct card_flow *flow)
{
    struct page *page = rows_page(&flow->rows);
    double top = page->empty ? CARDS_TOP : page->y + TO_CARDS;
    if (!page->empty && (flow->board.cards > 0 || rows_below(flow, page, top) < FULL_ROWS)) {
        page = rows_turn(&flow->rows, true);
        top = CARDS_TOP;
    }
    page->y = top;
    page->bottom = page->key - ROOM_BELOW;
    page->empty = false;
    size_t rows = rows_below(flow, page, top);
    rows = rows < 1 ? 1 : rows > DOWN_MOST ? DOWN_MOST : rows;
    flow->board = (struct board){.size = flow->size, .top = top, .rows = rows};
}

static size_t card_at(const struct board *board, size_t row, size_t column)
{
    bool inside = row < board->rows && column < (size_t)board->size->across;
    return inside ? board->at[row][column] : 0;
}

/* Is there a cut at the left side of this place; with `over`, over it? */
static bool is_cut(const struct board *board, size_t row, size_t column, bool over)
{
    size_t other = over         ? row > 0 ? card_at(board, row - 1, column) : 0
                   : column > 0 ? card_at(board, row, column - 1)
                                : 0;
    return card_at(board, row, column) != other;
}

/* The cuts along one line of the board, neighbors as one. */
static void rule_line(struct card_flow *flow, size_t line, bool over)
{
    const struct board *board = &flow->board;
    const struct card_size *size = board->size;
    size_t places = over ? (size_t)size->across : board->rows;
    double left = left_of(flow);
    for (size_t i = 0, end; i < places; i = end + 1) {
        end = i;
        while (end < places && is_cut(board, over ? line : end, over ? end : line, over)) {
            end++;
        }
        struct vec2 from =
            over
                ? vec2_of(left + (double)i * size->width, board->top + (double)line * size->height)
                : vec2_of(left + (double)line * size->width, board->top + (double)i * size->height);
        double length = (double)(end - i) * (over ? size->width : size->height);
        if (end > i) {
            galley_cut(rows_page(&flow->rows)->galley, from,
                       over ? vec2_of(from.x + length, from.y) : vec2_of(from.x, from.y + length));
        }
    }
}

/* Rows of the board that a card stands in. */
static size_t rows_used(const struct board *board)
{
    size_t used = 0;
    for (size_t row = 0; row < board->rows; row++) {
        for (size_t column = 0; column < (size_t)board->size->across; column++) {
            used = board->at[row][column] ? row + 1 : used;
        }
    }
    return used;
}

/* The cuts of a page that is full, and the line that says so where the key leaves room for it: the
 * scissors say the same. */
static void cut_page(struct card_flow *flow)
{
    const struct board *board = &flow->board;
    struct galley *galley = rows_page(&flow->rows)->galley;
    for (size_t row = 0; row <= board->rows; row++) {
        rule_line(flow, row, true);
    }
    for (size_t column = 0; column <= (size_t)board->size->across; column++) {
        rule_line(flow, column, false);
    }
    galley_scissors(galley, left_of(flow) - 10, board->top);
    double base = board->top + (double)rows_used(board) * board->size->height + TO_NOTE;
    if (base + NOTE_TO_KEY > rows_page(&flow->rows)->key) {
        return;
    }
    struct str said =
        str_format(flow->rows.setter.arena,
                   "Cut along the dashes. Grouped by situation, then in the "
                   "order of the book.%s%s",
                   board->wide ? " A busy diagram takes two places." : "",
                   flow->turned ? " The next card is too tall for what is left here." : "");
    const struct text_block *note = words_set(&flow->rows.setter, TYPE_NOTE, said, 0);
    galley_text_end(galley, note, left_of(flow) + PAGE_WIDE, base, ROLE_SOFT);
}

/* Does no card stand in so many rows and columns from there on? */
static bool is_free(const struct board *board, size_t row, size_t column, size_t rows,
                    size_t columns)
{
    for (size_t i = 0; i < rows * columns; i++) {
        if (board->at[row + i / columns][column + i % columns] != 0) {
            return false;
        }
    }
    return true;
}

/* The first place, row by row from the last card on, where a card of so many rows and columns has
 * room: they stand in the order of the book. */
static bool find_place(const struct board *board, size_t rows, size_t columns, size_t *row,
                       size_t *column)
{
    for (size_t i = 0; i + rows <= board->rows; i++) {
        for (size_t k = 0; k + columns <= (size_t)board->size->across; k++) {
            bool after = i * (size_t)board->size->across + k >= board->last;
            if (after && is_free(board, i, k, rows, columns)) {
                *row = i;
                *column = k;
                return true;
            }
        }
    }
    return false;
}

/* A new board for a card of so many rows, for which this one has no room. */
static void turn_board(struct card_flow *flow, size_t rows)
{
    size_t row, column;
    flow->turned = rows > 1 && find_place(&flow->board, 1, 1, &row, &column);
    cut_page(flow);
    open_board(flow);
    flow->turned = false;
}

static void place_card(struct card_flow *flow, const struct card_cell *cell)
{
    size_t row = 0, column = 0;
    size_t rows = cell->rows < flow->board.rows ? cell->rows : flow->board.rows;
    if (!find_place(&flow->board, rows, cell->columns, &row, &column)) {
        turn_board(flow, rows);
    }
    struct board *board = &flow->board;
    board->cards++;
    board->wide = board->wide || cell->columns > 1;
    board->last = row * (size_t)flow->size->across + column;
    for (size_t i = 0; i < rows * cell->columns; i++) {
        board->at[row + i / cell->columns][column + i % cell->columns] = board->cards;
    }
    struct arena *arena = flow->rows.setter.arena;
    galley_join(rows_page(&flow->rows)->galley, galley_copy(arena, cell->galley),
                left_of(flow) + (double)column * flow->size->width,
                board->top + (double)row * flow->size->height);
    if (cell->whole.size > 0) {
        VEC_PUSH(arena, &flow->shortened, str_copy(arena, cell->whole));
    }
}

static void flow_play(struct card_flow *flow, const struct carded *play)
{
    const struct setter *setter = &flow->setter;
    struct arena_mark mark = arena_mark(setter->arena);
    diagram_list diagrams = {0};
    scene_diagrams(setter->arena, booklet_run(setter, play->row), &diagrams);
    for (size_t i = 0; i < diagrams.count; i++) {
        struct card_cell cell = card_cell_make(setter, flow->size, &diagrams.at[i],
                                               play->situation.word, diagrams.count == 1);
        place_card(flow, &cell);
    }
    arena_release(setter->arena, mark);
}

static void flow_plays(struct card_flow *flow)
{
    const struct sheet_job *job = flow->rows.setter.job;
    const struct carded *plays = group_plays(&flow->rows.setter);
    for (size_t group = next_group(plays, job->count, 0); group != SIZE_MAX;
         group = next_group(plays, job->count, group + 1)) {
        for (size_t i = 0; i < job->count; i++) {
            if (plays[i].group == group) {
                flow_play(flow, &plays[i]);
            }
        }
    }
    cut_page(flow);
}

/* ---- the sheet ---- */

/* Names too long for a card. */
static void tell_names(struct card_flow *flow)
{
    if (flow->shortened.count == 0) {
        return;
    }
    rows_turn(&flow->rows, true);
    rows_add(&flow->rows, rows_section(&flow->rows, STR("Names in full"), STR("")));
    for (size_t i = 0; i < flow->shortened.count; i++) {
        struct galley *row = galley_new(flow->rows.setter.arena);
        galley_text(row,
                    words_set(&flow->rows.setter, TYPE_POINT, flow->shortened.at[i], PAGE_WIDE), 0,
                    12, ROLE_TEXT);
        row_end(row, 0.5);
        rows_add(&flow->rows, row);
    }
}

static void open_card(struct card_flow *flow)
{
    struct setter *setter = &flow->rows.setter;
    const struct sheet_job *job = setter->job;
    const struct play *first = job->plays[0].play;
    struct caution caution = caution_of_job(setter);
    struct head_words *head = arena_new(setter->arena, struct head_words);
    head->sheet = words_sheet(setter->arena, "Bench card", first);
    head->foot = job->count == 1 ? first->name : job->book->title;
    rows_open(&flow->rows, head, &caution);
}

static void flow_card(struct card_flow *flow, struct booklet *booklet, int per_page)
{
    *flow = (struct card_flow){.rows = {.setter = booklet->setter},
                               .setter = booklet->setter,
                               .size = card_size_find(per_page)};
    flow->rows.setter.arena = &booklet->keep;
    open_card(flow);
    open_board(flow);
    flow_plays(flow);
    tell_names(flow);
}

bool card_pages(struct booklet *booklet, struct writer *writer)
{
    const int large = 12, small = 20;
    const struct sheet_job *job = booklet->setter.job;
    struct card_flow flow;
    if (job->count == 0) {
        return false;
    }
    flow_card(&flow, booklet, job->per_page ? job->per_page : large);
    if (job->per_page == 0 && flow.rows.pages.count > 1) {
        flow_card(&flow, booklet, small);
    }
    rows_close(&flow.rows, booklet, STR("Bench card"));
    return rows_write(booklet, STR("bench card"), writer);
}
