/// The plan of what to count, read from the clinic file.
#pragma once

#include "desk/papers/count_sheet.hpp"
#include "store/port.hpp"
#include "supply/count_plan.hpp"

namespace sparewell::desk {

struct CountPlan {
  Clinic clinic;  ///< its catalogue, shelf and settings
  std::vector<supply::CountCandidate> candidates;
};

/// See supply::plan_counts. Refuses a place where nothing lies, naming those that there are.
[[nodiscard]] Expected<CountPlan> read_count_plan(const store::Snapshot& snapshot, Date today,
                                                  const std::string& place, int most);

/// Places with stock, in their order.
[[nodiscard]] std::vector<std::string> places_with_stock(const Clinic& clinic);

}  // namespace sparewell::desk
