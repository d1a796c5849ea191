/// The order policy beside common practice, over the clinic's own past and over drawn futures.
#pragma once

#include <string>

#include "supply/play/frontier.hpp"
#include "supply/play/futures.hpp"
#include "supply/play/past.hpp"

namespace sparewell::supply::play {

struct SimulationPlan {
  int months = 12;        ///< played of the past, and of each future; at least 1
  int futures = 12;       ///< 0: none
  double service = 0.95;  ///< the clinic's present service target, between 0 and 1
  int warm_up_days = 90;  ///< played before the months and not counted
};

/// All settings over one past or over several futures, for the items of one currency.
struct Played {
  Currency currency;
  int items = 0;
  int worlds = 0;  ///< 1 for the past
  Period period;
  std::vector<Totals> runs;              ///< in the order of settings_to_play
  std::optional<Saving> saving;          ///< of sparewell
  std::optional<Saving> saving_by_cost;  ///< at the same fill rate

  /// Ours at the present service target.
  [[nodiscard]] const Totals& ours(double service) const;
};

struct Simulation {
  Date today;
  SimulationPlan plan;
  std::vector<Played> past;     ///< the currency of most pieces first; empty when refused
  std::string past_refused;     ///< one sentence why, otherwise ""
  std::vector<Played> futures;  ///< likewise
  int without_cost = 0;         ///< stocked items left out because their cost is not known
  int patient_ordered = 0;      ///< items left out because they are ordered for a patient
};

/// Plays ours, min-max and order-when-empty. The past needs half a year of records before it
/// begins. Pieces that are booked for patients are not played. Refuses with one sentence when
/// nothing can be played or `goes_on` stopped it. Throws std::invalid_argument for a plan out of
/// its bounds. Pure: the same records give the same result in whatever order they come.
[[nodiscard]] Expected<Simulation> simulate(const Clinic& clinic, const wear::PriorTable& priors,
                                            Date today, const SimulationPlan& plan,
                                            const GoesOn& goes_on = {});

}  // namespace sparewell::supply::play
