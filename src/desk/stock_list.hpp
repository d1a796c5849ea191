/// What lies where: the lists that are asked for of the stock.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::desk {

struct StockQuestion {
  std::string place;  ///< "" for all
  std::string item;   ///< "" for all
  std::optional<int>
      expiring;  ///< only lots whose use-by date comes within so many days or is past
};

/// By place, item and lot; when expiring lots are asked for, the earliest use-by date first.
[[nodiscard]] std::vector<StockLevel> stock_levels(const Clinic& clinic,
                                                   const StockQuestion& question, Date today);
/// What is under way between places.
[[nodiscard]] std::vector<StockLevel> transits(const Clinic& clinic);
/// Every place that is recorded, or has stock or patients, by sort and name.
[[nodiscard]] std::vector<Place> all_places(const Clinic& clinic);

}  // namespace sparewell::desk
