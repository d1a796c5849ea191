/// What a unit has been through: the part of the wear model that the records fix before anything is
/// estimated.
#pragma once

#include <optional>
#include <vector>

#include "clinic/clinic.hpp"
#include "wear/alternation.hpp"
#include "wear/entry.hpp"
#include "wear/factors.hpp"
#include "wear/usage_spans.hpp"

namespace sparewell::wear {

/// Days worn (share times calendar days) under one set of factors.
struct WearSpan {
  FactorVector factors{};
  double days = 0;
};

/// A life up to its end, or up to today. Spans with the same factors are merged, so their order
/// says nothing; there is none when the unit was never worn.
struct Exposure {
  std::vector<WearSpan> spans;
  FactorVector at_end{};  ///< factors in force when it ended
  bool worn_out = false;  ///< ended by wear; otherwise the life is right-censored
  /// Of the spans, the part before it was under observation, when only units that had lasted so
  /// long were recorded (see entry.hpp): the life is left-truncated there. Empty when it was seen
  /// from its issue.
  std::vector<WearSpan> before_entry;
};

/// Integral of share * exp(beta . z) over the spans: the wear age in days of reference use.
[[nodiscard]] double wear_age(const std::vector<WearSpan>& spans, const FactorVector& beta);

/// Exposures of the units of one clinic, as known at the end of `today`. A date is one moment, so a
/// life from the 1st to the 11th is ten days.
class Exposures {
 public:
  /// `records_begin`: the end of the day from which endings are recorded; empty when all are.
  Exposures(const Clinic& clinic, const ClinicIndex& index, Date today,
            std::optional<Date> records_begin = std::nullopt);

  /// Precondition: issued by today. An ended life of zero days counts as half a day. A unit that
  /// ended by the day on which it entered has no spans: such units are there by accident.
  [[nodiscard]] Exposure of(const Unit& unit, Kind kind) const;

  [[nodiscard]] const Alternation& alternation() const { return alternation_; }
  [[nodiscard]] const UsageByPatient& usage() const { return usage_; }

 private:
  Date today_;
  Entries entries_;
  UsageByPatient usage_;
  Alternation alternation_;
};

}  // namespace sparewell::wear
