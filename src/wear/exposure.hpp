/// What a unit has been through: the part of the wear model that the records fix before anything is
/// estimated.
#pragma once

#include <vector>

#include "clinic/clinic.hpp"
#include "wear/alternation.hpp"
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
};

/// Integral of share * exp(beta . z) over the spans: the wear age in days of reference use.
[[nodiscard]] double wear_age(const Exposure& exposure, const FactorVector& beta);

/// Exposures of the units of one clinic, as known at the end of `today`. A date is one moment, so a
/// life from the 1st to the 11th is ten days. Records when units were already worn at issue (left
/// truncation) would enter here, as a second list of spans up to the entry into the records.
class Exposures {
 public:
  Exposures(const Clinic& clinic, const ClinicIndex& index, Date today);

  /// Precondition: issued by today. An ended life of zero days counts as half a day.
  [[nodiscard]] Exposure of(const Unit& unit, Kind kind) const;

  [[nodiscard]] const Alternation& alternation() const { return alternation_; }
  [[nodiscard]] const UsageByPatient& usage() const { return usage_; }

 private:
  Date today_;
  UsageByPatient usage_;
  Alternation alternation_;
};

}  // namespace sparewell::wear
