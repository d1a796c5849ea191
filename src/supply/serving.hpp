/// From where the pieces that are booked for patients can come.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::supply {

/// The pieces of one booking; the counts sum to its quantity.
struct Serving {
  const Reservation* booking = nullptr;
  int here = 0;                     ///< lie at its place
  int elsewhere = 0;                ///< lie in another store
  int coming = 0;                   ///< in transit, or on order and expected by its day
  int late = 0;                     ///< on order, and expected after its day
  int missing = 0;                  ///< neither there nor coming
  std::optional<Date> expected_on;  ///< when the last of those on order are expected
  std::string other_place = {};     ///< where the first of those elsewhere lie
};

/// Every booking with pieces, in the order in which they are served: the soonest first, those
/// without a day before them. Each takes usable pieces in stores (not past their use-by date on its
/// day), at its own place before others, then what is in transit, then what is on order, the
/// soonest first. A day that has passed is taken as today. Refers to the clinic.
[[nodiscard]] std::vector<Serving> servings(const Clinic& clinic, Date today);

}  // namespace sparewell::supply
