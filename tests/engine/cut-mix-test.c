// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-mix.h"
#include "engine/error.h"

#include <math.h>

#define MOST_STOCKS 3
#define MOST_TYPES 4

typedef struct {
  double kerf;
  SwStock stocks[MOST_STOCKS]; /* up to a price of 0 */
  SwPiece pieces[MOST_TYPES];  /* up to a count of 0 */
  double cost;
  guint lengths, bars; /* different lengths used; bars in all */
} Case;

/* Worked by hand. */
static const Case cases[] = {
  /* two boards of 1.90 m and a cut: one of 14 ft, not two of 8 */
  { 0.0032, { { 2.4384, 10 }, { 3.6576, 14 }, { 4.2672, 16 } }, { { 1.9, 2 } }, 16, 1, 1 },
  /* a long and a short piece, each out of the length that suits it */
  { 0.003, { { 3.048, 5 }, { 1.2, 2 } }, { { 3, 1 }, { 1, 1 } }, 7, 2, 2 },
  /* the short length costs more a metre, and is still the cheaper rest */
  { 0, { { 6, 12 }, { 2, 5 } }, { { 3, 2 }, { 2, 1 } }, 17, 2, 2 },
  /* one length is as a plan of one length */
  { 0.003,
    { { 3.048, 8 } },
    { { 1.830, 4 }, { 0.960, 3 }, { 0.450, 6 }, { 0.355, 4 } },
    40,
    1,
    5 },
  /* four quarters and their cuts fill a bar to the last hair: 4·0.75975 + 3·0.003 = 3.048 */
  { 0.003, { { 3.048, 5 }, { 6.2, 11 } }, { { 0.75975, 4 }, { 6.1, 1 } }, 16, 2, 2 },
  /* a length no piece comes out of is no way to cut anything */
  { 0, { { 0.5, 0.01 }, { 3, 3 } }, { { 1.5, 3 } }, 6, 1, 2 },
};

static gsize
stocks_of (const Case *c)
{
  gsize n = 0;

  while (n < MOST_STOCKS && c->stocks[n].price > 0)
    n++;
  return n;
}

static gsize
types_of (const Case *c)
{
  gsize n = 0;

  while (n < MOST_TYPES && c->pieces[n].count > 0)
    n++;
  return n;
}

static SwCutMix *
solve (const Case *c, int most_nodes)
{
  g_autoptr (GError) error = NULL;
  SwCutMixJob job = { c->stocks, stocks_of (c), c->kerf, c->pieces, types_of (c), most_nodes };
  SwCutMix *mix = sw_cut_mix_new (&job, NULL, &error);

  g_assert_no_error (error);
  return mix;
}

static void
check_bar (const SwCutPlan *plan, const GArray *bar)
{
  double used_m = -plan->kerf_m;

  for (guint k = 0; k < bar->len; k++)
    used_m += g_array_index (bar, double, k) + plan->kerf_m;
  g_assert_cmpuint (bar->len, >, 0);
  g_assert_cmpfloat (used_m, <=, plan->stock_m + 1e-9);
}

static double
price_of (const Case *c, double stock_m)
{
  for (gsize i = 0; i < stocks_of (c); i++) {
    if (fabs (c->stocks[i].stock_m - stock_m) < 1e-9)
      return c->stocks[i].price;
  }
  return NAN;
}

/* Every piece is there, every bar can be cut, the cost is the bars'. */
static void
check_mix (const Case *c, const SwCutMix *mix)
{
  double wanted_m = 0, got_m = 0, cost = 0;

  for (gsize i = 0; i < types_of (c); i++)
    wanted_m += c->pieces[i].length_m * c->pieces[i].count;
  for (guint p = 0; p < mix->plans->len; p++) {
    const SwCutPlan *plan = mix->plans->pdata[p];
    for (guint b = 0; b < plan->bars->len; b++)
      check_bar (plan, plan->bars->pdata[b]);
    got_m += plan->bars->len * plan->stock_m - plan->waste_m;
    cost += plan->bars->len * price_of (c, plan->stock_m);
  }
  g_assert_cmpfloat_with_epsilon (got_m, wanted_m, 1e-9);
  g_assert_cmpfloat_with_epsilon (mix->cost, cost, 1e-9);
  g_assert_cmpfloat (mix->bound, <=, mix->cost + 1e-12);
}

static void
test_by_hand (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwCutMix) mix = solve (&cases[i], 0);
    check_mix (&cases[i], mix);
    g_assert_cmpfloat_with_epsilon (mix->cost, cases[i].cost, 1e-9);
    g_assert_cmpuint (mix->plans->len, ==, cases[i].lengths);
    g_assert_cmpuint (sw_cut_mix_bars (mix), ==, cases[i].bars);
    g_assert_true (mix->optimal);
  }
}

/* With more lengths to choose from it never costs more; and never less than its bound. */
static void
test_a_choice_never_costs_more (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (77);

  for (int i = 0; i < 40; i++) {
    Case c = { .kerf = 0.003, .stocks = { { 3.048, 8.5 } } };
    for (guint k = 0; k < MOST_TYPES; k++)
      c.pieces[k] =
        (SwPiece){ g_rand_int_range (rand, 200, 3000) / 1000.0, g_rand_int_range (rand, 1, 7) };
    double last = INFINITY;
    for (guint n = 1; n <= MOST_STOCKS; n++) {
      g_autoptr (SwCutMix) mix = solve (&c, 0);
      check_mix (&c, mix);
      g_assert_cmpfloat (mix->cost, <=, last + 1e-9);
      last = mix->cost;
      if (n < MOST_STOCKS)
        c.stocks[n] = (SwStock){ g_rand_int_range (rand, 1000, 7000) / 1000.0,
                                 g_rand_int_range (rand, 20, 200) / 10.0 };
    }
  }
}

/* Broken off at once it says so, and shows how much could be left to save. */
static void
test_node_limit_shows_its_gap (void)
{
  Case hard = { 0.003,
                { { 3.048, 4.4 }, { 2.4384, 3.4 }, { 4.2672, 6 } },
                { { 1.2, 5 }, { 0.9, 7 }, { 0.6, 3 }, { 0.3, 11 } },
                0,
                0,
                0 };
  g_autoptr (SwCutMix) mix = solve (&hard, 1);
  g_autoptr (SwCutMix) best = solve (&hard, 0);

  check_mix (&hard, mix);
  g_assert_false (mix->optimal);
  g_assert_cmpfloat (mix->bound, <, mix->cost);
  g_assert_cmpfloat (mix->bound, <=, best->cost);
  g_assert_cmpfloat (best->cost, <=, mix->cost);
  g_assert_true (best->optimal);
}

/* Sixty lengths have more patterns than are listed: the cheapest length alone, which says that
 * it does not know. */
static void
test_too_many_patterns_leave_one_length (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GRand) rand = g_rand_new_with_seed (60);
  static const SwStock stocks[] = { { 6, 12 }, { 4, 8.5 } };
  SwPiece pieces[60];

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    pieces[i] =
      (SwPiece){ g_rand_int_range (rand, 300, 3000) / 1000.0, g_rand_int_range (rand, 1, 9) };
  SwCutMixJob job = { stocks, 2, 0.003, pieces, 60, 0 };
  g_autoptr (SwCutMix) mix = sw_cut_mix_new (&job, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (mix->plans->len, ==, 1);
  g_assert_cmpfloat (mix->bound, >, 0.95 * mix->cost);
  g_assert_cmpfloat (mix->bound, <=, mix->cost);
}

static void
test_no_piece_costs_nothing (void)
{
  static const SwStock stock = { 3, 5 };
  SwPiece none = { 1, 0 };
  SwCutMixJob job = { &stock, 1, 0, &none, 1, 0 };
  g_autoptr (SwCutMix) mix = sw_cut_mix_new (&job, NULL, NULL);

  g_assert_cmpfloat_with_epsilon (mix->cost, 0, 1e-12);
  g_assert_cmpuint (sw_cut_mix_bars (mix), ==, 0);
  g_assert_true (mix->optimal);
}

static void
test_refusals (void)
{
  static const struct {
    SwStock stock;
    double piece_m;
    int code;
  } refused[] = { { { 3, 5 }, 3.1, SW_ERROR_NO_SOLUTION },
                  { { 3, 0 }, 1, SW_ERROR_RANGE },
                  { { 3, NAN }, 1, SW_ERROR_RANGE },
                  { { 0, 5 }, 1, SW_ERROR_RANGE } };

  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autoptr (GError) error = NULL;
    SwPiece piece = { refused[i].piece_m, 1 };
    SwCutMixJob job = { &refused[i].stock, 1, 0, &piece, 1, 0 };
    g_assert_null (sw_cut_mix_new (&job, NULL, &error));
    g_assert_error (error, SW_ERROR, refused[i].code);
  }
}

static void
test_cancelled (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  SwStock stock = { 3, 5 };
  SwPiece piece = { 1, 1 };
  SwCutMixJob job = { &stock, 1, 0, &piece, 1, 0 };

  g_cancellable_cancel (cancellable);
  g_assert_null (sw_cut_mix_new (&job, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cut-mix/by hand", test_by_hand);
  g_test_add_func ("/engine/cut-mix/a choice never costs more", test_a_choice_never_costs_more);
  g_test_add_func ("/engine/cut-mix/node limit shows its gap", test_node_limit_shows_its_gap);
  g_test_add_func ("/engine/cut-mix/too many patterns leave one length",
                   test_too_many_patterns_leave_one_length);
  g_test_add_func ("/engine/cut-mix/no piece costs nothing", test_no_piece_costs_nothing);
  g_test_add_func ("/engine/cut-mix/refusals", test_refusals);
  g_test_add_func ("/engine/cut-mix/cancelled", test_cancelled);
  return g_test_run ();
}
