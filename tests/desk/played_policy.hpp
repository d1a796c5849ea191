/// A play of the order policy with figures that are easy to follow.
#pragma once

#include "desk/policy_play.hpp"

namespace sparewell::desk {

inline supply::play::Totals played_run(supply::play::Policy policy, double step, double fill_rate,
                                       double stock, int worlds) {
  supply::play::Totals run;
  run.setting = {policy, step, supply::play::Rounding::nearest};
  run.worlds = worlds;
  run.pieces = 1000LL * worlds;
  run.served_at_once = static_cast<std::int64_t>(fill_rate * 1000 * worlds + 0.5);
  run.patients = 500 * worlds;
  run.kept_waiting = 20 * worlds;
  run.waited_days = 90LL * worlds;
  run.longest_wait = 14;
  run.rush = 10 * worlds;
  run.stock = 100 * stock;
  run.expired = 5000LL * worlds;
  run.orders = 200 * worlds;
  run.freight = 240000LL * worlds;
  return run;
}

inline supply::play::Played played_world(int worlds) {
  using supply::play::Policy;
  supply::play::Played played;
  played.currency = {"EUR"};
  played.items = 90;
  played.worlds = worlds;
  played.runs = {played_run(Policy::sparewell, 0.5, 0.52, 1400, worlds),
                 played_run(Policy::sparewell, 0.9, 0.92, 8000, worlds),
                 played_run(Policy::sparewell, 0.95, 0.96, 12000, worlds),
                 played_run(Policy::by_cost, 0.95, 0.95, 7000, worlds),
                 played_run(Policy::min_max, 0, 0.3, 900, worlds),
                 played_run(Policy::min_max, 1, 0.9, 15000, worlds),
                 played_run(Policy::min_max, 1.25, 0.9, 15000, worlds),
                 played_run(Policy::min_max, 2, 0.96, 20000, worlds),
                 played_run(Policy::min_max, 3, 0.95, 22000, worlds),
                 played_run(Policy::when_empty, 0, 0.8, 14000, worlds)};
  played.saving = supply::play::Saving{0.96, 1200000, 2000000, 0.4, 0.31, 0.48};
  played.saving_by_cost = supply::play::Saving{0.96, 900000, 2000000, 0.55, 0.5, 0.6};
  return played;
}

/// The past, and four futures; in euros.
inline PolicyPlayPtr played_policy() {
  supply::play::Simulation made;
  made.today = make_date(2026, 11, 25);
  made.past = {played_world(1)};
  made.futures = {played_world(4)};
  made.patient_ordered = 3;
  made.without_cost = 1;
  return std::make_shared<const PolicyPlay>(std::move(made));
}

}  // namespace sparewell::desk
