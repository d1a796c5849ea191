/// How long transfers between places take, learned from the ledger.
#pragma once

#include <map>
#include <span>
#include <string>

#include "clinic/stock.hpp"

namespace sparewell::supply {

/// Days assumed while no transfer has arrived (our choice).
inline constexpr int assumed_transit_days = 1;

class TransitDays {
 public:
  /// Knows of none.
  TransitDays() = default;
  /// `movements` in the order of writing. What arrives at a place is what was sent there first of
  /// its lot; what was taken back or lost on the way teaches nothing.
  explicit TransitDays(std::span<const StockMovement> movements);

  /// The mean of the transfers that arrived there, as whole days, halves up; where none did that of
  /// all that arrived anywhere; assumed_transit_days where none did at all.
  [[nodiscard]] int to(const std::string& place) const;
  /// Transfers that to(place) rests on.
  [[nodiscard]] int seen(const std::string& place) const;

 private:
  struct Record {
    int arrived = 0;
    long long days = 0;
  };
  [[nodiscard]] const Record& record_of(const std::string& place) const;

  Record all_;
  std::map<std::string, Record> by_place_;
};

}  // namespace sparewell::supply
